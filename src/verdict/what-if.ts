import type { Criterion, Specification } from '../documents/kinds.ts';
import { QUANTITIES } from '../documents/quantities.ts';
import { quote } from '../problem/echo.ts';
import { type Reading, readNumber, readQuantity } from '../quantity/quantity.ts';

/** A limit that is tried out: `median>=48 J`. */
export interface WhatIf {
  /** As it was asked. */
  readonly text: string;
  readonly criterion: string;
  readonly side: 'atLeast' | 'atMost';
  /** The limit with its unit, as written. */
  readonly limit: string;
}

/** Reads `CRITERION>=LIMIT` or `CRITERION<=LIMIT` (`≥`, `≤`). */
export function readWhatIf(text: string): Reading<WhatIf> {
  const [, criterion, sign, limit] = /^\s*(.+?)\s*(>=|<=|≥|≤)\s*(\S.*?)\s*$/u.exec(text) ?? [];
  if (criterion === undefined || limit === undefined) {
    return {
      ok: false,
      why: `found ${quote(text)}, expected the id of a criterion, >= or <=, and a limit with its unit, such as "median>=48 J"`,
    };
  }
  return {
    ok: true,
    value: { text, criterion, side: sign === '>=' || sign === '≥' ? 'atLeast' : 'atMost', limit },
  };
}

/**
 * The criterion with the limit tried out instead of its own; a range keeps its other end.
 *
 * @returns why not, where the limit is of another dimension than the criterion's quantity, or leaves no range.
 */
export function withLimit(criterion: Criterion, { side, limit: text }: WhatIf): Reading<Criterion> {
  const { unit } = criterion.limit;
  const other = side === 'atLeast' ? 'atMost' : 'atLeast';
  if (criterion.limit[other] !== undefined) {
    const sign = side === 'atLeast' ? '<=' : '>=';
    return {
      ok: false,
      why: `criterion ${quote(criterion.id)} has a limit on the other side; ask with ${sign}`,
    };
  }
  const isPure = QUANTITIES.get(criterion.quantity)?.isPure === true && unit === '1';
  const bare = isPure ? readNumber(text) : null;
  const read: Reading<number> =
    bare === null ? withoutTolerance(readQuantity(text, unit)) : { ok: true, value: bare };
  if (!read.ok) return { ok: false, why: `criterion ${quote(criterion.id)}: ${read.why}` };
  const { within } = criterion.limit;
  if (within === undefined) return { ok: true, value: { ...criterion, limit: { [side]: read.value, unit } } };
  const moved = side === 'atLeast' ? { ...within, lower: read.value } : { ...within, upper: read.value };
  if (moved.lower > moved.upper) {
    const why = `criterion ${quote(criterion.id)}: ${quote(text)} leaves nothing of its range; try the other end`;
    return { ok: false, why };
  }
  return { ok: true, value: { ...criterion, limit: { within: moved, unit } } };
}

/** The criteria of some specifications that a question names. */
export function criteriaNamed(specifications: readonly Specification[], { criterion }: WhatIf): Criterion[] {
  return specifications.flatMap(({ criteria }) => criteria.filter(({ id }) => id === criterion));
}

function withoutTolerance(reading: ReturnType<typeof readQuantity>): Reading<number> {
  if (!reading.ok) return reading;
  if (reading.value.tolerance === null) return { ok: true, value: reading.value.value };
  return { ok: false, why: `found ${quote(reading.value.text)}, expected a value without a tolerance` };
}
