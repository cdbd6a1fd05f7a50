import { lawTable } from '../../statistics/calibration/law-table.ts';
import { fitQuickly } from '../../statistics/calibration/quick-fit.ts';
import {
  type Dose,
  dOptimalPlace,
  type Information,
  informationOf,
  placeGrid,
  roughInformation,
  roughPlace,
} from '../../statistics/d-optimal/next-level.ts';
import type { StandardLaw } from '../../statistics/laws/standard-law.ts';
import { emptySample } from '../../statistics/likelihood/empty-sample.ts';
import { fitLocationScale } from '../../statistics/likelihood/fit.ts';
import { gatherObservations } from '../../statistics/likelihood/observation.ts';

/** Drops and failures at a level, on the fitted scale. */
export interface Failures extends Dose {
  readonly failures: number;
}

/** What a D-optimal choice is reckoned with. */
export interface Reckoning {
  /** Best location and scale; null where there is none. */
  fit(doses: readonly Failures[]): { readonly location: number; readonly scale: number } | null;
  information(doses: readonly Dose[], location: number, scale: number): Information;
  /** The place of the next drop, in scales from the location, within a range. */
  place(information: Information, from: number, to: number): number;
}

/** To the last digit: for the person at the rig. */
export function exactly(law: StandardLaw): Reckoning {
  return {
    fit(doses) {
      const rows = doses.flatMap(({ level, drops, failures }) => [
        { lower: -Infinity, upper: level, count: failures },
        { lower: level, upper: Infinity, count: drops - failures },
      ]);
      // The levels are on the fitted scale already.
      const sample = gatherObservations(
        rows.filter(({ count }) => count > 0),
        'identity',
      );
      const fit = fitLocationScale(sample, law);
      return fit.kind === 'exists' ? fit : null;
    },
    information: (doses, location, scale) => informationOf(doses, law, location, scale),
    place: (information, from, to) => dOptimalPlace(information, law, from, to).place,
  };
}

/**
 * To a twentieth of a spread, forty times as fast: for simulated tests, on whose levels a fraction of a step has no
 * effect that could be seen.
 */
export function roughly(law: StandardLaw): Reckoning {
  const grid = placeGrid(law);
  const table = lawTable(law);
  const best = { location: 0, scale: 0, turn: 0, supremum: 0 };
  let sample = emptySample(64);
  const add = (lower: number, upper: number, count: number) => {
    if (count === 0) return;
    sample.lower[sample.size] = lower;
    sample.upper[sample.size] = upper;
    sample.count[sample.size++] = count;
  };
  return {
    fit(doses) {
      if (sample.lower.length < 2 * doses.length) sample = emptySample(4 * doses.length);
      sample.size = 0;
      for (const { level, drops, failures } of doses) {
        add(-Infinity, level, failures);
        add(level, Infinity, drops - failures);
      }
      fitQuickly(sample, table, best);
      return best.scale > 0 ? { location: best.location, scale: best.scale } : null;
    },
    information: (doses, location, scale) => roughInformation(doses, grid, location, scale),
    place: (information, from, to) => roughPlace(information, grid, from, to),
  };
}
