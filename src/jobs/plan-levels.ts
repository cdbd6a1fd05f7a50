import { isStepping, levelLimits, plannedLevels, ruleFor } from '../impact/rules/method-rules.ts';
import type { PlannedLevel } from '../result/plan.ts';
import { impactSpeed, potentialEnergy } from '../rig/energy.ts';
import type { DesignedTest } from './design-of.ts';

/** Levels shown either side of the start of a series that goes both ways. */
const AROUND = 8;
/** Levels of a rise that are shown. */
const RISE = 20;

/** The levels that a test may come to, in rising order: those of the protocol, or the ones about its start. */
export function levelsOf(design: DesignedTest): PlannedLevel[] {
  const { protocol, rig } = design;
  const start = startOf(design);
  return levelNumbers(design).map((level) => {
    const height = protocol.vary === 'mass' ? protocol.height! : level;
    const mass = protocol.vary === 'mass' ? level : design.mass;
    return {
      height,
      mass,
      energy: mass === null ? null : potentialEnergy(mass, design.gravity.value, height),
      impactSpeed: impactSpeed(design.gravity.value, height),
      isStart: level === start,
    };
  });

  function levelNumbers({ protocol: { levels, method } }: DesignedTest): readonly number[] {
    if (levels !== null) return levels;
    if (!isStepping(method)) {
      const { min, max } = levelLimits(protocol, rig);
      return [min, start, max]
        .filter((level) => level !== null)
        .filter((level, i, all) => all.indexOf(level) === i);
    }
    const { at, lowest, highest, within } = plannedLevels(protocol, rig);
    const from = within(0);
    const first = method === 'rising-height' ? from : Math.max(lowest, from - AROUND);
    const last = Math.min(highest, from + (method === 'rising-height' ? RISE : AROUND));
    return Array.from({ length: last - first + 1 }, (_, i) => at(first + i));
  }
}

/** The level of the first drop, which the rule itself gives. */
export function startOf({ protocol, rig }: DesignedTest): number {
  const rule = ruleFor(protocol, rig);
  const advice = rule.advice(rule.start);
  return advice.decision === 'height' ? advice.height : Number.NaN;
}
