import type { DeviationList } from '../../conformance/deviation-list.ts';
import { instantOf } from '../../logs/instant.ts';
import { quote } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import { raiseAt } from './replayed.ts';
import type { Session } from './session.ts';
import { pastOf } from './tyre.ts';

/** Seconds between two hits on one tyre: rubber recovers, and a tyre left alone cools. Common practice, no source. */
const SHORTEST = 30;
const LONGEST = 900;

/** Raises DROP-50 where a tyre had less or more time between two hits than that. */
export function checkRests({ visits, columns, tyres }: Session, list: DeviationList): void {
  if (!columns.has('time') || tyres.length === visits.length) return;
  for (const visit of visits) {
    const { tyre, drop } = visit;
    const instant = drop.time === null ? null : instantOf(drop.time);
    const past = pastOf(tyre);
    const before = past.lastTime;
    past.lastTime = instant;
    if (instant === null || before === null || visit.use === 'ignored') continue;
    const seconds = (instant - before) / 1000;
    // A clock that goes back says nothing of a rest.
    if (seconds < 0 || (seconds >= SHORTEST && seconds <= LONGEST)) continue;
    const found = () =>
      `${quote(tyre.name)} hit ${seconds < 120 ? `${upTo(seconds, 1)} s` : `${upTo(seconds / 60, 1)} min`} after its hit before, expected 30 s to 15 min`;
    raiseAt(list, visit, 'DROP-50', found);
  }
}
