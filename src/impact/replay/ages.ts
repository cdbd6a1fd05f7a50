import type { DeviationList } from '../../conformance/deviation-list.ts';
import { registerCell } from '../../logs/register.ts';
import { spanOf } from '../../logs/span.ts';
import { echo } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import type { Session } from './session.ts';
import type { Tyre } from './tyre.ts';

const WEEK = 7 * 86_400_000;
/** Weeks by which the middle ages of compared constructions may differ. Common practice, no source. */
const WEEKS = 4;

/** Raises DROP-28 where the tyres of compared constructions were cured weeks apart. */
export function checkAges({ tyres, groups, visits }: Session, list: DeviationList): void {
  if (groups.length < 2) return;
  const cured = new Map<string, { first: Tyre; moments: number[] }>();
  const sampleOf = new Map(visits.map(({ tyre, sample }) => [tyre, sample]));
  for (const tyre of tyres) {
    const text = tyre.row === null ? null : registerCell(tyre.row, 'cured');
    const span = text === null ? null : spanOf(text, 'Z');
    const name = groups[sampleOf.get(tyre) ?? 0]?.key.construction;
    if (span === null || name == null || tyre.stranger !== null) continue;
    const known = cured.get(name);
    if (known === undefined) cured.set(name, { first: tyre, moments: [span.from] });
    else known.moments.push(span.from);
  }
  const middles = [...cured].map(([name, { first, moments }]) => ({ name, first, middle: median(moments) }));
  middles.sort((a, b) => a.middle - b.middle);
  const [oldest, youngest] = [middles.at(0), middles.at(-1)];
  if (oldest === undefined || youngest === undefined || youngest.middle - oldest.middle <= WEEKS * WEEK)
    return;
  const apart = upTo((youngest.middle - oldest.middle) / WEEK, 1);
  const { file, line } = youngest.first.row!;
  const found = () =>
    `tyres of ${echo(youngest.name, 40)} were cured ${apart} weeks after those of ${echo(oldest.name, 40)}, expected at most ${WEEKS}`;
  list.add({ code: 'DROP-28', found, file, line });
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
