import type { EnduranceBlock } from '../documents/kinds.ts';
import { conditionWeights } from './fold.ts';
import type { ConditionSums, Frame } from './frame.ts';
import { type ClassBand, classBand, type FoldPlan, liftedClass, turningClass } from './plan.ts';
import type { LogRules } from './rules.ts';

/** What a condition means in one block. */
export interface JudgedCondition {
  /** Whether the drum turns; a missing speed is taken for turning. */
  readonly isTurning: boolean;
  /** Load below what any block asks: the arm is up. */
  readonly isLifted: boolean;
  /** Turning under load with every channel within its limits: nothing is to be watched. */
  readonly isOrdinary: boolean;
  /** By channel: within the block's limits, below, above, missing, or not asked for. */
  readonly channels: readonly ChannelState[];
}

/** The conditions of a frame, each read against the block in which it was run. */
export type JudgedFrame = readonly (JudgedCondition & { readonly sums: ConditionSums })[];

export type ChannelState = 'in' | 'below' | 'above' | 'missing' | 'free';

/** Reads the number of a condition against the limits of one block; each number is worked out once. */
export class ConditionJudge {
  readonly #plan: FoldPlan;
  readonly #weights: readonly number[];
  readonly #bands: readonly (ClassBand | null)[];
  readonly #turning: number;
  readonly #lifted: number;
  readonly #known = new Map<number, JudgedCondition>();

  constructor(plan: FoldPlan, block: EnduranceBlock, schedule: readonly EnduranceBlock[], rules: LogRules) {
    this.#plan = plan;
    this.#weights = conditionWeights(plan);
    this.#bands = plan.channels.map((channel, c) => classBand(channel, c, block));
    this.#turning = turningClass(plan);
    this.#lifted = liftedClass(plan, schedule, rules);
  }

  /** Whether the block sets limits for a channel. */
  isHeld(channel: number): boolean {
    return this.#bands[channel] !== null;
  }

  judgeFrame({ conditions }: Frame): JudgedFrame {
    return conditions.map((sums) => ({ sums, ...this.judge(sums.condition) }));
  }

  judge(condition: number): JudgedCondition {
    let known = this.#known.get(condition);
    if (!known) {
      known = this.#judge(condition);
      this.#known.set(condition, known);
    }
    return known;
  }

  #judge(condition: number): JudgedCondition {
    const classes = this.#plan.channels.map(({ cuts }, c) =>
      cuts.length === 0 ? 0 : Math.floor(condition / this.#weights[c]!) % (cuts.length + 2),
    );
    const channels = classes.map((value, c): ChannelState => {
      const limits = this.#bands[c];
      if (!limits) return 'free';
      if (value === this.#plan.channels[c]!.cuts.length + 1) return 'missing';
      if (value < limits.low) return 'below';
      return value > limits.high ? 'above' : 'in';
    });
    const isTurning = classes[0]! >= this.#turning;
    const isLifted = classes[1]! <= this.#lifted;
    const isOrdinary =
      isTurning && !isLifted && channels.every((state) => state === 'in' || state === 'free');
    return { isTurning, isLifted, isOrdinary, channels };
  }
}
