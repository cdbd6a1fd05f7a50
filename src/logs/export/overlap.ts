import type { Drop } from '../drop.ts';
import type { WallTime } from '../time/time-format.ts';

interface Met {
  readonly line: number;
  readonly segment: number;
  readonly content: string;
}

/** Rows that a rig writes twice: at a restart, when it appends, when its buffer is flushed again. */
export class Overlap {
  collapsed = 0;
  readonly #counter: 'continues' | 'restarts';
  readonly #hasSeconds: boolean;
  readonly #met = new Map<string, Met>();
  #segment = 0;

  /** @param hasSeconds whether times tell the second: two drops of one second are one */
  constructor(counter: 'continues' | 'restarts', hasSeconds: boolean) {
    this.#counter = counter;
    this.#hasSeconds = hasSeconds;
  }

  /** A new header begins a stretch. */
  begin(): void {
    this.#segment += 1;
  }

  /**
   * Whether a row was met before: `same` cell for cell, or as another row with the same running number (or, without
   * one, time and specimen) in another stretch. Inside one stretch that is for the check of the numbers to say.
   */
  meet(drop: Drop, time: WallTime | null): 'same' | { readonly line: number; readonly what: string } | null {
    const clock = time === null ? drop.time : `${time.wall}.${time.fraction}${time.offset ?? ''}`;
    const identity = this.#identity(drop, clock);
    if (identity === null) return null;
    const content = JSON.stringify({ ...drop, line: 0, time: clock });
    const met = this.#met.get(identity.key);
    if (!met) {
      this.#met.set(identity.key, { line: drop.line, segment: this.#segment, content });
      return null;
    }
    const isOtherStretch = met.segment !== this.#segment;
    if (met.content === content && (isOtherStretch || identity.isSure)) {
      this.collapsed += 1;
      return 'same';
    }
    return isOtherStretch ? { line: met.line, what: identity.what } : null;
  }

  #identity(
    { number, specimen }: Drop,
    clock: string | null,
  ): { key: string; what: string; isSure: boolean } | null {
    if (number !== null && this.#counter === 'continues') {
      return { key: `${number}`, what: `drop ${number}`, isSure: true };
    }
    if (clock === null) return null;
    if (number !== null) {
      return { key: `${number} ${clock}`, what: `drop ${number}, at the same time`, isSure: true };
    }
    // Two equal rows of one minute may be two drops; of one second they are not.
    return { key: `${clock} ${specimen}`, what: 'the same time and specimen', isSure: this.#hasSeconds };
  }
}
