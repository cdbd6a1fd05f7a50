import type { Stop } from '../documents/kinds.ts';
import {
  chosenExperiment,
  type ExperimentBase,
  fixedExperiment,
  resolutionOf,
  risingExperiment,
  steppedExperiment,
} from '../impact/estimates/experiments.ts';
import { ASSUMED_SHARE, HEADROOM, inTable } from '../impact/estimates/repeatable.ts';
import { dropsAtMost, type FixedHit, type SteppedSeries } from '../impact/estimates/walks.ts';
import { chosenLevels, hitsAllowed, plannedLevels, specimensOf } from '../impact/rules/method-rules.ts';
import type { Experiment } from '../statistics/calibration/experiment.ts';
import type { NullSpread } from '../statistics/calibration/null-strength.ts';
import type { TabulatedTest } from '../statistics/calibration/tabulated-criticals.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { toScale } from '../statistics/likelihood/observation.ts';
import { type Design, ruleOf } from './design.ts';

/** A design as simulation repeats it for critical values, as `repeatable` has the test of a log. */
export interface DesignExperiment {
  readonly experiment: Experiment;
  readonly tabulated: TabulatedTest | null;
  /** What the spread under a hypothesis goes by in one test of the design. */
  spreadOf(basis: ProfileBasis): NullSpread;
}

/** The experiment of a design; null where `analyze` gives no calibrated intervals either, or its size is left open. */
export function experimentOf(design: Design): DesignExperiment | null {
  const { protocol, rig, energyPerLevel } = design;
  if (protocol.energy !== 'potential' || protocol.sites.each === 'series-per-site') return null;
  const { standard, scale } = laws[protocol.distribution];
  const isOnce = protocol.sites.each === 'new-spot' && hitsAllowed(protocol) === 1;
  const base: ExperimentBase = {
    law: standard,
    share: isOnce ? 0 : ASSUMED_SHARE,
    energyAt: (level) => toScale(level * energyPerLevel, scale),
  };
  const found = (experiment: Experiment | null, tabulated: TabulatedTest | null = null) =>
    experiment && { experiment, tabulated, spreadOf: () => experiment };
  switch (protocol.method) {
    case 'up-and-down':
    case 'transformed-up-and-down': {
      if (protocol.stop === null) return null;
      const { perSpecimen } = specimensOf(protocol);
      const series: SteppedSeries = {
        levels: plannedLevels(protocol, rig),
        start: 0,
        stop: protocol.stop,
        specimens: Array.from({ length: usualDrops(protocol.stop, perSpecimen) }, (_, i) =>
          Math.floor(i / perSpecimen),
        ),
      };
      return found(steppedExperiment([series], protocol, base), inTable(protocol, [series], base));
    }
    case 'rising-height': {
      const specimens = protocol.stop?.specimens;
      if (specimens === undefined || protocol.stop?.drops !== undefined) return null;
      const levels = plannedLevels(protocol, rig);
      const highest = Math.min(levels.highest, Math.max(levels.within(0), 0) + 2 * HEADROOM);
      return found(risingExperiment(levels, highest, specimens, base));
    }
    case 'fixed-level':
      return found(fixedExperiment(protocol.levels ?? [], plannedHits(design), base));
    default: {
      const levels = chosenLevels(protocol, rig);
      const { stop } = protocol;
      if (levels === null || stop === null) return null;
      const mostDrops = dropsAtMost(stop, usualDrops(stop, specimensOf(protocol).perSpecimen));
      const series = { rule: ruleOf(design), levels, mostDrops };
      const range = base.energyAt(levels.at(-1)!) - base.energyAt(levels[0]!);
      const experiment = chosenExperiment(series, range / 16, base);
      if (experiment === null) return null;
      const spreadOf = ({ ends: { highestLower, lowestUpper, lowest, highest } }: ProfileBasis) => ({
        ...experiment,
        step: resolutionOf(highestLower, lowestUpper, highest - lowest),
      });
      return { experiment, tabulated: null, spreadOf };
    }
  }
}

/** Drops that a test is taken to need where its stop rule does not say: twice as many may be made. */
function usualDrops({ drops, reversals, specimens, atMost }: Stop, perSpecimen: number): number {
  if (drops !== undefined) return drops;
  if (reversals !== undefined) return 4 * reversals;
  if (specimens !== undefined) return specimens * Math.min(perSpecimen, 20);
  return atMost ?? 30;
}

/** The hits of a fixed-level test in which no tyre fails. */
function plannedHits(design: Design): FixedHit[] {
  const levels = design.protocol.levels ?? [];
  const rule = ruleOf(design);
  const hits: FixedHit[] = [];
  let state = rule.start;
  let specimen = -1;
  let hit = 0;
  for (;;) {
    const advice = rule.advice(state);
    if (advice.decision === 'stop') return hits;
    const isNew = advice.specimen === 'new' || specimen < 0;
    if (isNew) specimen += 1;
    hit = isNew ? 1 : hit + 1;
    hits.push({ level: levels.indexOf(advice.height), specimen });
    state = rule.step(state, { height: advice.height, outcome: 'survived', specimen: '', hit });
  }
}
