import { normal } from '../laws/normal.ts';
import type { ProfileBasis } from '../likelihood/constrained.ts';
import { randomStream } from '../random/random-stream.ts';
import { guardedShare, restsOnShare } from './assumed-share.ts';
import { bestLine, liesAbove } from './best-line.ts';
import type { Experiment } from './experiment.ts';
import { nullStrength } from './null-strength.ts';
import { drawn } from './replicates.ts';
import { signedRoots } from './signed-roots.ts';

/** Shares of simulated tests whose statistic is at least as extreme as the observed one, the observed one counted in. */
export interface CalibratedTest {
  readonly twoSided: number;
  /** Small where the quantile lies above y: y is then below the lower bound. */
  readonly above: number;
  /** Small where the quantile lies below y. */
  readonly below: number;
}

/** Grid of scales against Newton's method: roots nearer than this count as equal. */
const SAME = 1e-4;

/**
 * The calibrated test of one value y (fitted scale) of the quantile at share failed p, by direct simulation: y is in the
 * calibrated interval at a level just where 1 − level is exceeded. What coverage is measured with, and cheaper than an
 * interval where only one value matters, such as a limit or no difference. With an assumed share between specimens it is
 * never stricter than the test by χ².
 */
export function testCalibrated(
  basis: ProfileBasis,
  experiment: Experiment,
  p: number,
  y: number,
  { seed, size }: { readonly seed: number; readonly size: number },
): CalibratedTest {
  const { strength, value } = nullStrength(basis, experiment, p, y);
  const z = basis.law.quantile(p);
  const drawing = drawn(experiment);
  const roots = new Float64Array(size);
  signedRoots(drawing, experiment.step)(drawing.at(strength, size, randomStream(seed)), y, p, roots);
  const root = Math.sqrt(Math.max(0, 2 * (basis.supremum - value)));
  const observed = liesAbove(bestLine(basis), z, y) ? root : -root;
  let twoSided = 1;
  let above = 1;
  let below = 1;
  for (const drawnRoot of roots) {
    if (Math.abs(drawnRoot) >= root - SAME) twoSided++;
    if (drawnRoot >= observed - SAME) above++;
    if (drawnRoot <= observed + SAME) below++;
  }
  const tested = { twoSided: twoSided / (size + 1), above: above / (size + 1), below: below / (size + 1) };
  if (!restsOnShare(experiment)) return tested;
  return {
    twoSided: Math.max(guardedShare(tested.twoSided), 2 * normal.sf(root)),
    above: Math.max(guardedShare(tested.above), normal.sf(observed)),
    below: Math.max(guardedShare(tested.below), normal.cdf(observed)),
  };
}
