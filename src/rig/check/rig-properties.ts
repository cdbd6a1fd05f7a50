import type { Rig } from '../../documents/kinds.ts';
import type { RigReading } from '../../logs/rig-readings.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import { kilograms, upTo } from '../../quantity/format.ts';
import type { RigProperty } from '../../result/rig-check.ts';
import { studentLaw } from '../../statistics/laws/student.ts';
import { summarise } from '../../statistics/summary/moments.ts';
import { impactSpeed } from '../energy.ts';
import { MASS_TOLERANCE } from '../mass.ts';

/** Velocity ratios that a rig can have at all: above, the gates or the zero of the scale are wrong, below, it is no free fall. */
const POSSIBLE = { least: 0.7, most: 1.01 };
/** Where a rig should be; as for each drop (DROP-12, DROP-13). Common practice, no source. */
const RATIO = { lower: 0.98, upper: 1 };
/** mm by which the scale may differ. Common practice, no source. */
const SCALE = { lower: -2, upper: 2 };
const LEVEL = 0.95;

/**
 * The velocity ratios v/√(2gh) of the rows with a speed, h being the fall down to the gate.
 *
 * @throws InputError for a ratio that no rig can have: above 1 by more than gates read (1 %), or below 0.7
 */
export function velocityRatios(readings: readonly RigReading[], gravity: number): number[] {
  const problems: Problem[] = [];
  const ratios = readings.flatMap((reading) => {
    const { height, velocity, flag, covered, gate, file, line } = reading;
    const speed = velocity ?? (flag === null || covered === null ? null : flag / 1000 / covered);
    if (speed === null) return [];
    const fall = height === null ? null : height - (gate ?? 0);
    const refuse = (code: string, message: string) =>
      problems.push({ file, line, column: null, code, message });
    if (fall === null || !(fall > 0)) {
      const found = fall === null ? 'no height' : `a fall of ${upTo(fall, 1)} mm down to the gate`;
      refuse('no-fall', `found ${found} with a speed, expected a height above the gate; note it`);
      return [];
    }
    const free = impactSpeed(gravity, fall);
    const ratio = speed / free;
    if (ratio > POSSIBLE.most || ratio < POSSIBLE.least) {
      const side = ratio > 1 ? 'above' : 'far below';
      const settle =
        ratio > 1
          ? 'nothing falls faster: measure the flag, the place of the gate and the zero of the height again'
          : 'expected at least 0.7: look for a gate that saw another edge, a rubbing guide, a height in another unit';
      refuse(
        ratio > 1 ? 'above-free-fall' : 'velocity-ratio',
        `found ${upTo(speed, 3)} m/s, ${side} the ${upTo(free, 3)} m/s of a free fall of ${upTo(fall, 1)} mm (velocity ratio ${upTo(ratio, 3)}); ${settle}`,
      );
      return [];
    }
    return [ratio];
  });
  if (problems.length > 0) throw new InputError(problems);
  return ratios;
}

/** What the readings say of a rig, each property that they speak of. Throws as velocityRatios does. */
export function rigProperties(readings: readonly RigReading[], rig: Rig, gravity: number): RigProperty[] {
  const ratios = velocityRatios(readings, gravity);
  const heights = readings.flatMap(({ height, reference }) =>
    height === null || reference === null ? [] : [height - reference],
  );
  const masses = readings.flatMap(({ mass }) => mass ?? []);
  const stated = rig.mass?.value ?? null;
  const tolerance = rig.mass?.tolerance ?? { kind: 'relative', fraction: MASS_TOLERANCE };
  const half = (value: number) =>
    tolerance.kind === 'absolute' ? tolerance.value : value * tolerance.fraction;
  return [
    ...(ratios.length === 0 ? [] : [held('velocity-ratio', '1', ratios, RATIO, ratioWords)]),
    ...(heights.length === 0 ? [] : [held('height-scale', 'mm', heights, SCALE, scaleWords)]),
    ...(masses.length === 0 || stated === null
      ? []
      : [
          held(
            'mass',
            'kg',
            masses,
            { lower: stated - half(stated), upper: stated + half(stated) },
            (mean, isOut) =>
              `the falling mass weighs ${kilograms(mean)}, stated ${kilograms(stated)}${isOut ? '; begin a new configuration with the weighed mass, or find what was left off' : ''}`,
          ),
        ]),
  ];
}

function held(
  property: RigProperty['property'],
  unit: string,
  values: readonly number[],
  limits: RigProperty['limits'],
  words: (mean: number, isOut: boolean) => string,
): RigProperty {
  const { n, mean, standardDeviation } = summarise(values);
  const error = standardDeviation === null ? null : standardDeviation / Math.sqrt(n);
  const half = error === null ? null : studentLaw(n - 1).quantileOfSf((1 - LEVEL) / 2) * error;
  const isOut = mean < limits.lower || mean > limits.upper;
  return {
    property,
    unit,
    readings: n,
    mean,
    standardDeviation,
    interval: half === null ? null : { level: LEVEL, lower: mean - half, upper: mean + half },
    limits,
    standing: isOut ? 'out' : 'good',
    why: words(mean, isOut),
  };
}

function ratioWords(mean: number, isOut: boolean): string {
  const arrives = `${upTo(100 * mean * mean, 1)} % of the energy arrives`;
  if (!isOut) return arrives;
  return mean > 1
    ? `${arrives}, more than there is: check flag, gate and zero of the height`
    : `${arrives}: clean and oil the guide, look for contact, and measure again before results are taken as good`;
}

function scaleWords(mean: number, isOut: boolean): string {
  const off = `the scale reads ${upTo(Math.abs(mean), 2)} mm ${mean < 0 ? 'low' : 'high'}`;
  return isOut ? `${off}: set its zero on first contact with the tyre again` : off;
}
