import type { FoldPlan } from './plan.ts';

/**
 * What lies between a row and the one before it:
 *
 * - `run`: the next sample in time; the counter went on, or stood
 * - `standing`: the counter went on although the drum stood at both ends
 * - `gap`: too long ago, and the counter says that the drum ran; `pause`: too long ago, and it stood
 * - `reset`, `gap-reset`: the counter fell, from sample to sample or across a gap; `rollover`: it ran over
 * - `jump`: the counter gained more than a drum can
 * - `clock`: time stepped, back or ahead, while the counter shows neighbouring samples
 * - `overlap`: time and counter stepped back together: rows written before are written again
 */
export type LinkKind =
  | 'run'
  | 'standing'
  | 'gap'
  | 'pause'
  | 'reset'
  | 'gap-reset'
  | 'rollover'
  | 'jump'
  | 'clock'
  | 'overlap';

/** Time and distance between two neighbouring rows; one object is used again and again. */
export class Link {
  kind: LinkKind = 'run';
  /** Milliseconds of running or standing that the later row answers for; 0 for gaps. */
  time = 0;
  /** Steps that the later row answers for. Negative where rows come twice, so that nothing counts double. */
  distance = 0;
  /** Steps counted while the drum stood. */
  standing = 0;
  /** Steps under conditions that nobody logged. */
  unverified = 0;
  /** Integral of speed, (v₁ + v₂)·Δt. */
  integral = 0;

  /**
   * Measures from row to row. Only these two rows decide, so that a log may be cut anywhere between.
   *
   * @param time0 milliseconds; `counter` and `speed` in steps, NaN where missing (or where there is no counter)
   */
  measure(
    plan: FoldPlan,
    time0: number,
    counter0: number,
    speed0: number,
    time: number,
    counter: number,
    speed: number,
  ): LinkKind {
    this.kind = 'run';
    this.time = 0;
    this.distance = 0;
    this.standing = 0;
    this.unverified = 0;
    this.integral = 0;
    const elapsed = time - time0;
    const gained = counter - counter0;
    const isTurning = speed0 > plan.standstill || speed > plan.standstill;
    if (elapsed > plan.gap) this.#across(plan, elapsed, gained, counter0, counter, speed0, speed);
    else if (elapsed < 0) this.#back(plan, elapsed, gained, speed0, speed);
    else this.#near(plan, elapsed, gained, isTurning, counter0, counter, speed0, speed);
    return this.kind;
  }

  #near(
    plan: FoldPlan,
    elapsed: number,
    gained: number,
    isTurning: boolean,
    counter0: number,
    counter: number,
    speed0: number,
    speed: number,
  ): void {
    this.#runFor(plan, elapsed, speed0, speed);
    if (plan.counter < 0 || Number.isNaN(gained)) return;
    const byIntegral = this.distance;
    this.distance = gained;
    if (gained > plan.counterJump) {
      this.kind = 'jump';
      this.distance = byIntegral;
    } else if (gained < 0) {
      const rolled = rolledOver(plan, counter0, counter);
      this.kind = rolled === null ? 'reset' : 'rollover';
      this.distance = rolled ?? byIntegral;
    } else if (gained > 0 && !isTurning && !Number.isNaN(speed + speed0)) {
      this.kind = 'standing';
      this.distance = 0;
      this.standing = gained;
    }
  }

  #across(
    plan: FoldPlan,
    elapsed: number,
    gained: number,
    counter0: number,
    counter: number,
    speed0: number,
    speed: number,
  ): void {
    const steps = ((speed0 + speed) * plan.kilometresPerIntegral) / plan.kilometresPerStep;
    const isRunning = speed0 > plan.standstill && speed > plan.standstill;
    const near = steps * plan.gap;
    if (isRunning && elapsed >= 60_000 && gained > 0 && gained <= near && near * 20 < steps * elapsed) {
      // A drum that had stopped would be met while it runs up: here only the clock went ahead.
      this.kind = 'clock';
      this.#runFor(plan, plan.interval, speed0, speed);
      this.distance = gained;
    } else if (Number.isNaN(gained) || gained === 0) {
      this.kind = gained === 0 || !isRunning ? 'pause' : 'gap';
    } else if (gained > 0) {
      this.kind = 'gap';
      this.unverified = gained;
    } else {
      const rolled = rolledOver(plan, counter0, counter);
      this.kind = rolled === null ? 'gap-reset' : 'gap';
      // Since it fell the counter has gone from nought to here; what it had gained before is lost.
      this.unverified = rolled ?? Math.max(0, Math.min(counter, plan.counterJump + 2 * steps * elapsed));
      if (Number.isNaN(this.unverified)) this.unverified = 0;
    }
  }

  #back(plan: FoldPlan, elapsed: number, gained: number, speed0: number, speed: number): void {
    const most = plan.counterJump + (200 / 3_600_000 / plan.kilometresPerStep) * -elapsed;
    if (gained < 0 && -gained <= most) {
      this.kind = 'overlap';
      this.time = elapsed;
      this.distance = gained;
      this.integral = Math.round((gained * plan.kilometresPerStep) / plan.kilometresPerIntegral);
      return;
    }
    this.kind = gained < 0 ? 'gap-reset' : 'clock';
    if (this.kind === 'gap-reset') return;
    this.#runFor(plan, plan.interval, speed0, speed);
    if (plan.counter < 0 || Number.isNaN(gained)) return;
    if (gained <= plan.counterJump) this.distance = gained;
    else {
      this.distance = 0;
      this.unverified = gained;
    }
  }

  /** Time, integral, and the distance that follows from it: what the counter says is put over it. */
  #runFor(plan: FoldPlan, elapsed: number, speed0: number, speed: number): void {
    this.time = elapsed;
    const sum = speed0 + speed;
    this.integral = Number.isNaN(sum) ? 0 : Math.max(0, sum) * elapsed;
    this.distance =
      plan.counter < 0
        ? this.integral
        : Math.round((this.integral * plan.kilometresPerIntegral) / plan.kilometresPerStep);
  }
}

/** Where counters run over, in the units that a register or a display counts. */
const REGISTERS = [100, 1000, 10_000, 100_000, 1_000_000, 65_536, 65.536, 655.36, 6553.6];

/** Steps gained where the counter ran over at the end of a register, or null where it fell for another reason. */
function rolledOver(plan: FoldPlan, counter0: number, counter: number): number | null {
  for (const register of REGISTERS) {
    const full = Math.round(register / plan.kilometresPerStep);
    const gained = full - counter0 + counter;
    if (
      counter0 < full &&
      gained >= 0 &&
      counter0 > full * 0.99 &&
      counter < full * 0.01 &&
      gained <= plan.counterJump
    ) {
      return gained;
    }
  }
  return null;
}
