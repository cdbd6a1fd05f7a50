import { counted } from '../../quantity/format.ts';
import type { Visit } from './replayed.ts';

/** From so many moves on a log may be called one that the rule did not make. Common practice, no source. */
const ENOUGH_MOVES = 10;

/** A history that the rule could not have made. */
export interface ForeignHistory {
  /** The catalogue's code of most of its moves. */
  readonly code: string;
  /** Without a full stop. */
  readonly found: string;
  /** What it means, and what settles it. */
  readonly effect: string;
}

/**
 * Counts the moves of a series and those that its rule did not ask for. A few are departures, told one by one, and the
 * likelihood bears them. Where they are more than half, chance would follow the rule as well: the log was made by
 * another protocol, or its outcomes are read the wrong way round, and no number may be had from it under this one.
 */
export class MoveTally {
  #moves = 0;
  #opposite = 0;
  #first: Visit | null = null;
  readonly #codes = new Map<string, number>();

  /**
   * @param code of the departure that the move was; null where the rule asked for it
   * @param isOpposite whether it went the way that the other outcome would have asked for
   */
  count(visit: Visit, code: string | null, isOpposite = false): void {
    this.#moves += 1;
    if (code === null) return;
    this.#first ??= visit;
    this.#codes.set(code, (this.#codes.get(code) ?? 0) + 1);
    if (isOpposite) this.#opposite += 1;
  }

  /** Null as a rule. */
  foreign(series: string, method: string): ForeignHistory | null {
    const off = [...this.#codes.values()].reduce((sum, count) => sum + count, 0);
    if (this.#moves < ENOUGH_MOVES || off * 2 <= this.#moves) return null;
    const [code] = [...this.#codes].reduce((most, one) => (one[1] > most[1] ? one : most));
    const isMirrored = this.#opposite * 2 > this.#moves;
    return {
      code,
      found: `${off} of ${counted(this.#moves, 'move')} of ${series} are none that ${method} asks for, the first on line ${this.#first!.drop.line}`,
      effect: isMirrored
        ? 'most go up after a failure and down after a survival: check which words of the log mean failed and survived (outcomes in the rig), or amend them'
        : 'this protocol did not make the log: name the one that did, or one of fixed levels, whose drops may come in any order; amend what was written wrongly',
    };
  }
}
