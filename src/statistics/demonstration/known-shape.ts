import { chiSquaredLaw } from '../laws/gamma.ts';
import type { Life } from '../turnbull/kaplan-meier.ts';
import { successRunSize } from './success-run.ts';

/**
 * Lower limit of the characteristic life where the Weibull shape is known: (2 Σ t^shape/χ²)^(1/shape), χ² at the confidence with
 * 2·(failures + 1) degrees (Nelson 1985). Without failures −ln(1 − C) stands for half of χ²; another convention puts one failure in
 * its place, which is a confidence of 63.2 %.
 *
 * @throws RangeError for a shape or confidence out of range, or no time on test
 */
export function knownShapeLower(lives: readonly Life[], shape: number, confidence: number): number {
  if (!(shape > 0)) throw new RangeError(`shape ${shape} is not above 0`);
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence ${confidence} is not between 0 and 1`);
  const failures = lives.filter((life) => life.failed).length;
  return (
    (totalOf(lives, shape) / (0.5 * chiSquaredLaw(2 * failures + 2).quantile(confidence))) ** (1 / shape)
  );
}

/** Characteristic life by maximum likelihood with a known shape: (Σ t^shape/failures)^(1/shape); null without failures. */
export function knownShapeLife(lives: readonly Life[], shape: number): number | null {
  const failures = lives.filter((life) => life.failed).length;
  return failures === 0 ? null : (totalOf(lives, shape) / failures) ** (1 / shape);
}

/** The life by which a share has failed, from the characteristic life: life·(−ln(1 − share))^(1/shape). */
export function lifeAtShare(characteristicLife: number, shape: number, share: number): number {
  return characteristicLife * (-Math.log1p(-share)) ** (1 / shape);
}

/**
 * How many must survive so many times the target without failure to show its reliability: with a known shape a run of k targets
 * counts as k^shape runs of one.
 */
export function knownShapeSize(
  reliability: number,
  confidence: number,
  timesTarget: number,
  shape: number,
): number {
  if (!(timesTarget > 0 && shape > 0))
    throw new RangeError(`${timesTarget} targets of shape ${shape} make no test`);
  return successRunSize(reliability ** (timesTarget ** shape), confidence);
}

function totalOf(lives: readonly Life[], shape: number): number {
  const total = lives.reduce((sum, life) => sum + life.time ** shape, 0);
  if (!(total > 0)) throw new RangeError('no time on test');
  return total;
}
