import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Raises DROP-45 where a second reader saw another outcome, DROP-43 where the outcome was amended later. */
export function checkReadings(visit: Visit, list: DeviationList): void {
  const { drop, acted } = visit;
  const second = drop.details?.secondReading ?? null;
  if (second !== null && drop.outcome !== null && second !== drop.outcome) {
    const reader = drop.details?.reader ?? null;
    const who = reader === null ? 'a second reader' : `the second reader (the first: ${quote(reader, 24)})`;
    raiseAt(list, visit, 'DROP-45', () => `read as ${drop.outcome}, by ${who} as ${second}`);
  }
  if (acted !== drop.outcome) {
    raiseAt(
      list,
      visit,
      'DROP-43',
      () => `${acted ?? 'no outcome'} in the log, ${drop.outcome ?? 'none'} since`,
    );
  }
}
