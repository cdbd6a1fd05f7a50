import type { UncertaintySource } from '../../documents/uncertainty-source.ts';
import type { DrawnCheck } from '../../result/uncertainty.ts';
import { expand } from '../../statistics/uncertainty/effective-degrees.ts';
import { drawResults, type InputLaw, symmetricInterval } from '../../statistics/uncertainty/monte-carlo.ts';
import { validatePropagation } from '../../statistics/uncertainty/validate-propagation.ts';
import { type DropSetting, dropBudget } from './drop-budget.ts';

/**
 * Enough for one digit of the standard uncertainty, whose last half is a twentieth of it or more: the ends scatter by 0.012 of it (the
 * standard error of a 2.5 % point of 50,000 normal draws).
 */
const TRIALS = 50_000;
const DIGITS = 1;
const LEVEL = 0.95;
export const DRAWN_SEED = 20261125;

/**
 * Draws the energy of a drop by the laws of its sources and holds value ± U against it (JCGM 101, clause 8): where they part the
 * drawn interval is the one to state.
 *
 * @param sources in use, at least one
 * @param near the energy in J; it is checked at two digits of it, so that a thousand runs of one rig need a few checks
 */
export function drawnCheck(
  sources: readonly UncertaintySource[],
  setting: DropSetting,
  near: number,
): DrawnCheck {
  const energy = Number(near.toPrecision(2));
  const key = [energy, setting.mass, setting.gravity, setting.pressure].join(' ');
  const ofRig = checked.get(sources) ?? new Map<string, DrawnCheck>();
  checked.set(sources, ofRig);
  const before = ofRig.get(key);
  if (before !== undefined) return before;
  const check = draw(sources, setting, energy);
  ofRig.set(key, check);
  return check;
}

const checked = new WeakMap<readonly UncertaintySource[], Map<string, DrawnCheck>>();

function draw(sources: readonly UncertaintySource[], setting: DropSetting, energy: number): DrawnCheck {
  const { mass, gravity, pressure } = setting;
  const budget = dropBudget(sources, setting, energy);
  const height = energy / (mass * gravity);
  // Run 50,000 times: plain sums, no object.
  const model = (departures: readonly number[]): number => {
    let [ofMass, ofGravity, ofHeight] = [mass, gravity, height];
    let [loss, byPressure, byTemperature] = [0, 0, 0];
    for (let i = 0; i < sources.length; i++) {
      const { of, sensitivity } = sources[i]!;
      const departure = departures[i]!;
      if (of === 'mass') ofMass += departure;
      else if (of === 'gravity') ofGravity += departure;
      else if (of === 'height') ofHeight += departure * 1e-3;
      else if (of === 'loss') loss += departure;
      else if (of === 'pressure') byPressure += (sensitivity! * departure) / pressure!;
      else byTemperature += sensitivity! * departure;
    }
    return ofMass * ofGravity * ofHeight * (1 - loss) + energy * (byPressure + byTemperature);
  };
  const results = drawResults(model, sources.map(lawOf), { trials: TRIALS, seed: DRAWN_SEED });
  const symmetric = symmetricInterval(results, LEVEL);
  const { expandedUncertainty } = expand(budget.whole, LEVEL);
  const { standardUncertainty } = budget.whole;
  const { tolerance, agrees } = validatePropagation(
    { value: energy, standardUncertainty, expandedUncertainty },
    { symmetric },
    DIGITS,
  );
  return {
    energy,
    trials: TRIALS,
    seed: DRAWN_SEED,
    level: LEVEL,
    propagated: { lower: energy - expandedUncertainty, upper: energy + expandedUncertainty },
    drawn: symmetric,
    tolerance,
    agrees,
  };
}

/** The law of a departure from the estimate: as stated, or Student's where the uncertainty rests on few degrees. */
function lawOf({ statement, standardUncertainty, degrees }: UncertaintySource): InputLaw {
  switch (statement.kind) {
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
      return { kind: statement.kind, lower: -statement.halfWidth, upper: statement.halfWidth };
    default:
      return Number.isFinite(degrees)
        ? { kind: 'student', mean: 0, standardUncertainty, degrees }
        : { kind: 'normal', mean: 0, standardUncertainty };
  }
}
