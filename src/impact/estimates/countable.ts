import type { ImpactProtocol } from '../../documents/kinds.ts';
import type { ReplayedSample } from '../replay/replay.ts';
import type { CountableDrops } from './from-count.ts';

/**
 * The drops of an up-and-down test as the count formula wants them: one series whose path was kept, one falling mass,
 * levels equally spaced on the scale where strength is taken as normal (an additive step for the normal law, a ratio
 * for the lognormal).
 *
 * @param energyPerHeight J for a mm, where one falling mass served all drops; null otherwise.
 */
export function countableDrops(
  { method, distribution, step }: ImpactProtocol,
  { series, drops }: ReplayedSample,
  energyPerHeight: number | null,
): CountableDrops {
  const no = (why: string): CountableDrops => ({ applies: false, why });
  if (method !== 'up-and-down') return no('it is for one step down after a failure, one up after a survival');
  const [only, ...others] = series;
  if (only === undefined) return no('there is no series');
  if (others.length > 0) return no('the drops belong to several series');
  if (distribution !== 'normal' && distribution !== 'lognormal') {
    return no(`it holds for normal and lognormal strength, not for ${distribution}`);
  }
  if (step === null || (step.kind === 'additive') !== (distribution === 'normal')) {
    const equal = distribution === 'normal' ? 'a step in mm' : 'a step in %';
    return no(`for ${distribution} strength its levels must be equally spaced by ${equal}`);
  }
  if (energyPerHeight === null) return no('the drops were not all made with one falling mass and by height');
  if (only.broken !== null) return no(only.broken);
  const origin = only.levels!.at(0) * energyPerHeight;
  return {
    applies: true,
    drops: drops
      .filter(({ use }) => use === 'used')
      .map(({ drop, level }) => ({ level: level!, failed: drop.outcome === 'failed' })),
    grid:
      step.kind === 'additive'
        ? { origin, step: step.size * energyPerHeight }
        : { origin: Math.log(origin), step: Math.log1p(step.ratio) },
  };
}
