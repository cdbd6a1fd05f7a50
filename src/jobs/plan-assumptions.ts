import { isStepping, stepAt } from '../impact/rules/method-rules.ts';
import type { PlanResult, Proposal } from '../result/plan.ts';
import type { AssumedStrength } from '../simulation/strength.ts';
import { laws } from '../statistics/laws/laws.ts';
import { readStrengths, type StatedStrength } from './assumed-strength.ts';
import type { DesignedTest } from './design-of.ts';

/** What a plan is simulated with, or why nothing can be. */
export interface Assumptions {
  readonly assumed: AssumedStrength | null;
  readonly why: string | null;
  readonly shown: PlanResult['assumed'];
  readonly defaults: readonly string[];
}

/**
 * Median and spread as stated; else by earlier results; else by the protocol: an up-and-down series starts at what its
 * author expects, by steps of about one spread, and fixed levels lie about the median. A rising-height protocol, which
 * starts far below, tells neither.
 *
 * @throws InputError with everything that is wrong with what is stated
 */
export function assumptionsOf(
  stated: StatedStrength,
  design: DesignedTest,
  proposal: Proposal | null,
): Assumptions {
  const usual = proposal === null ? byProtocol(design) : byProposal(design, proposal);
  const median = stated.median ?? usual?.median ?? null;
  const spread = stated.spread ?? usual?.spread ?? null;
  if (median === null || spread === null) {
    const why =
      'what the tyres withstand is not known: state it with --median and --spread, or give earlier results with --from';
    return { assumed: null, why, shown: null, defaults: [] };
  }
  const { assumed, spreadUnit, defaults } = readStrengths(
    { ...stated, median, spread, medians: null },
    design,
  );
  const [one] = assumed;
  const { law, median: value, spread: size, between, damage, anyOffset } = one!;
  const origin = (text: string | null) => (text === null ? usual!.from : 'as stated');
  const from = `median ${origin(stated.median)}, spread ${origin(stated.spread)}`;
  return {
    assumed: one!,
    why: null,
    shown: { law, median: value, spread: size, spreadUnit, between, damage, anyOffset, from },
    defaults,
  };
}

interface Usual {
  readonly median: string;
  readonly spread: string;
  readonly from: string;
}

function byProposal({ protocol }: DesignedTest, { median, spread }: Proposal): Usual {
  const isLog = laws[protocol.distribution].scale === 'log';
  return {
    median: `${median} J`,
    spread: isLog ? `${(100 * spread) / median} %` : `${spread} J`,
    from: 'by earlier results',
  };
}

function byProtocol({ protocol, energyPerLevel }: DesignedTest): Usual | null {
  const isLog = laws[protocol.distribution].scale === 'log';
  const usual = (middle: number, step: number): Usual => ({
    median: `${middle * energyPerLevel} J`,
    spread: isLog ? `${(100 * step) / middle} %` : `${step * energyPerLevel} J`,
    from: 'by the protocol (its middle level, its step; common practice, no source)',
  });
  const { levels, start, step, method } = protocol;
  if (levels !== null && levels.length > 1) {
    const [lowest, highest] = [levels[0]!, levels.at(-1)!];
    return usual((lowest + highest) / 2, (highest - lowest) / (levels.length - 1));
  }
  if (method === 'rising-height' || !isStepping(method) || start === null || step === null) return null;
  return usual(start, stepAt(start, step));
}
