import type { Frame } from './frame.ts';

/** How far a test had come at an instant; steps. */
export interface Milestone {
  /** Every one counted, and those at the condition. */
  readonly run: number;
  readonly atCondition: number;
  /** Whether the instant lies within the log. */
  readonly isLogged: boolean;
}

/** Milliseconds behind the last row that still belong to it: what a tyre ran is kept by whole minutes. */
const NEAR = 90_000;

/** Remembers how far the drum had run at instants that are known before the log is read: those of the events. */
export class Milestones {
  readonly #times: readonly number[];
  readonly #reached = new Map<number, Milestone>();
  #next = 0;
  #run = 0;
  #atCondition = 0;
  #hasBegun = false;
  #last = Number.NaN;

  /** @param times milliseconds since 1970 */
  constructor(times: readonly number[]) {
    this.#times = [...new Set(times)].sort((a, b) => a - b);
  }

  /** Takes every frame in order, with the steps that it brought; within it the drum is taken to have run evenly. */
  pass({ first, last }: Frame, run: number, atCondition: number): void {
    while (this.#next < this.#times.length && this.#times[this.#next]! <= last.time) {
      const time = this.#times[this.#next++]!;
      const span = last.time - first.time;
      const share = span > 0 ? Math.max(0, (time - first.time) / span) : time >= first.time ? 1 : 0;
      this.#reached.set(time, {
        run: this.#run + Math.round(share * run),
        atCondition: this.#atCondition + Math.round(share * atCondition),
        isLogged: this.#hasBegun || time >= first.time,
      });
    }
    this.#hasBegun = true;
    this.#last = last.time;
    this.#run += run;
    this.#atCondition += atCondition;
  }

  /** How far the test had come; at its end for an instant behind the log. */
  at(time: number): Milestone {
    const isLogged = this.#hasBegun && time - this.#last <= NEAR;
    return this.#reached.get(time) ?? { run: this.#run, atCondition: this.#atCondition, isLogged };
  }
}
