import type { DrumEvent } from '../logs/events.ts';
import { type Register, registerCell } from '../logs/register.ts';
import { quote } from '../problem/echo.ts';
import type { Problem } from '../problem/problem.ts';

/** Where a tyre stood, from when to when; milliseconds since 1970, infinite where nothing bounds it. */
export interface Stint {
  readonly position: string;
  readonly from: number;
  readonly to: number;
}

/** A tyre on a drum of several positions, and where it stood in turn. */
export interface TyreOnDrum {
  /** Null where nobody noted who stood there. */
  readonly specimen: string | null;
  readonly stints: readonly Stint[];
}

/** Words of the table of events. Common practice, no source. */
const ON: ReadonlySet<string> = new Set(['mounted', 'moved']);
const OFF: ReadonlySet<string> = new Set(['taken off', 'removed', 'failed', 'failure', 'burst', 'suspended']);

/**
 * Who stood where: by the events `mounted` and `moved`, whose value is the position, up to the next of them or an end;
 * for tyres without such an event by the column `position` of the register; a position of which nobody notes anything
 * is kept without a name.
 *
 * @param positions as the log names them
 * @returns the problems too: a position that the log does not have, two tyres at one position at a time
 */
export function tyresOnDrum(
  positions: readonly string[],
  events: readonly DrumEvent[],
  register: Register | null,
): { readonly tyres: readonly TyreOnDrum[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const named = (text: string | null): string | null =>
    positions.find((position) => position.toLowerCase() === text?.trim().toLowerCase()) ?? null;
  const moves = events.filter(({ event, specimen }) => specimen !== null && ON.has(event.toLowerCase()));
  const byEvents = [...new Set(moves.map(({ specimen }) => specimen!))].map((specimen): TyreOnDrum => {
    const own = events.filter((event) => event.specimen === specimen).toSorted((a, b) => a.time - b.time);
    const stints = own.flatMap((event, i): Stint[] => {
      if (!ON.has(event.event.toLowerCase())) return [];
      const position = named(event.value);
      if (position === null) {
        problems.push(strangePosition(event, positions));
        return [];
      }
      const next = own
        .slice(i + 1)
        .find(({ event: word }) => ON.has(word.toLowerCase()) || OFF.has(word.toLowerCase()));
      return [{ position, from: event.time, to: next?.time ?? Number.POSITIVE_INFINITY }];
    });
    return { specimen, stints };
  });
  const known = new Set(byEvents.map(({ specimen }) => specimen));
  const byRegister = (register?.specimens ?? []).flatMap((row): TyreOnDrum[] => {
    const position = named(registerCell(row, 'position'));
    return position === null || known.has(row.specimen)
      ? []
      : [{ specimen: row.specimen, stints: [always(position)] }];
  });
  const noted = [...byEvents, ...byRegister].filter(({ stints }) => stints.length > 0);
  const unnoted = positions
    .filter((position) => !noted.some(({ stints }) => stints.some((stint) => stint.position === position)))
    .map((position): TyreOnDrum => ({ specimen: null, stints: [always(position)] }));
  problems.push(...twoAtOnce(noted, moves));
  return { tyres: [...noted, ...unnoted], problems };
}

function always(position: string): Stint {
  return { position, from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
}

function strangePosition({ file, line, value }: DrumEvent, positions: readonly string[]): Problem {
  const message = `value: found the position ${quote(value ?? '')}, expected ${positions.map((position) => quote(position)).join(' or ')} as in the log; correct it`;
  return { file, line, column: null, code: 'unknown-position', message };
}

function twoAtOnce(tyres: readonly TyreOnDrum[], moves: readonly DrumEvent[]): Problem[] {
  const all = tyres.flatMap(({ specimen, stints }) => stints.map((stint) => ({ specimen, ...stint })));
  return all.flatMap((later) => {
    const earlier = all.find(
      (other) =>
        other.position === later.position &&
        other.specimen !== later.specimen &&
        other.from <= later.from &&
        later.from < other.to,
    );
    const place = moves.find(({ specimen, time }) => specimen === later.specimen && time === later.from);
    if (!earlier || !place) return [];
    const message = `found ${quote(later.specimen ?? '')} at position ${quote(later.position)}, where ${quote(earlier.specimen ?? '')} still stands, expected one tyre at a time; note when that one was taken off`;
    return [{ file: place.file, line: place.line, column: null, code: 'two-tyres', message }];
  });
}
