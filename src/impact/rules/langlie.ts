import { type HistoryPlan, type HistoryState, ruleByHistory } from './by-history.ts';
import { sayer } from './levels.ts';
import type { MethodRule, Trial } from './rule.ts';

export interface LangliePlan extends HistoryPlan {
  readonly limits: { readonly min: number; readonly max: number };
}

/** The drops so far, the last one first; equal counts of both outcomes are found by walking back. */
interface Trail {
  readonly level: number;
  readonly failed: boolean;
  readonly before: Trail | null;
}

/**
 * The back-averaging one-shot method of Langlie (1962, A Reliability Test Method for "One-Shot" Items; the rule from
 * memory, no worked sequence was found in print). The first level is the middle of the range. After drop t, look back to
 * the nearest earlier drop j such that drops j to t hold as many failures as survivals: the next level is
 * (xₜ + xⱼ)/2. Where there is none, xₜ is averaged with the lower end of the range after a failure and with the upper
 * end after a survival.
 */
export function langlie(plan: LangliePlan): MethodRule<HistoryState<Trail | null>> {
  const { min, max } = plan.limits;
  const say = sayer(plan.varied);
  return ruleByHistory<Trail | null>(
    plan,
    null,
    (before, trial: Trial) => ({ level: trial.height, failed: trial.outcome === 'failed', before }),
    (trail) => {
      if (trail === null) return { level: (min + max) / 2, because: 'the middle of the range' };
      const balanced = balancedWith(trail);
      const end = trail.failed ? min : max;
      const other = balanced?.level ?? end;
      const whose =
        balanced === null
          ? `the ${trail.failed ? 'lower' : 'upper'} end of the range`
          : 'the level of the drop that it is balanced with';
      return {
        level: (trail.level + other) / 2,
        get because() {
          return `halfway from ${say(trail.level)} to ${say(other)}, ${whose}`;
        },
      };
    },
  );
}

/** The nearest earlier drop from which on both outcomes are as frequent, or null. */
function balancedWith(last: Trail): Trail | null {
  let balance = last.failed ? 1 : -1;
  for (let drop = last.before; drop !== null; drop = drop.before) {
    balance += drop.failed ? 1 : -1;
    if (balance === 0) return drop;
  }
  return null;
}
