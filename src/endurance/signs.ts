import { valueOfSteps } from './channel-unit.ts';
import { LISTED_EVENTS } from './event-tally.ts';
import type { Frame } from './frame.ts';
import type { FoldChannel, FoldPlan } from './plan.ts';
import type { LogRules, SignRules } from './rules.ts';

/** What may have been the beginning of a failure. */
export type SignKind =
  | 'pressure falls'
  | 'load jumps'
  | 'axle height jumps'
  | 'vibration rises'
  | 'temperature rises';

/** A sign of failure in the log: a candidate for a person to look at, never a result by itself. */
export interface Sign {
  readonly kind: SignKind;
  readonly channel: string;
  /** Place of the log among the logs, and the line of the first row of the minute in which it shows. */
  readonly file: number;
  readonly line: number;
  /** Milliseconds of that row. */
  readonly time: number;
  /** Steps run up to that minute. */
  readonly distance: number;
  /** In the unit of the results: the level before, and the mean of that minute. */
  readonly before: number;
  readonly after: number;
  /** Minutes for which it went on. */
  minutes: number;
}

interface Minute {
  readonly minute: number;
  readonly mean: number;
}

/** Minutes that make a level, and how few of them are enough. */
const LEVEL = 10;
const LEAST = 5;

/** What a channel must do to be a sign; `true` where it does. */
interface Watcher {
  readonly kind: SignKind;
  readonly channel: string;
  isSign(level: number, now: number, minutes: number): boolean;
}

function watchersOf(rules: SignRules): readonly Watcher[] {
  const rise = (kind: SignKind, channel: string, isSign: Watcher['isSign']): Watcher => ({
    kind,
    channel,
    isSign,
  });
  return [
    rise('pressure falls', 'pressure', (level, now, minutes) => {
      const share = (level - now) / level;
      return share > rules.pressureLoss && share / (minutes / 60) > rules.pressureLossPerHour;
    }),
    rise('load jumps', 'load', (level, now) => Math.abs(now - level) > rules.loadJump * level),
    rise('axle height jumps', 'axle height', (level, now) => Math.abs(now - level) > rules.heightJump),
    rise('vibration rises', 'vibration', (level, now) => level > 0 && now > rules.vibrationRise * level),
    rise('temperature rises', 'tyre temperature', (level, now) => now - level > rules.temperatureRise),
  ];
}

/**
 * Looks at the minutes of a test in their order for what a failing tyre does to a channel, against the level of the ten
 * minutes before. A stop or another block begins the levels anew, and until a tyre is warm only its pressure is watched:
 * a cold one heats up.
 */
export class Signs {
  count = 0;
  readonly listed: Sign[] = [];
  readonly #plan: FoldPlan;
  readonly #rules: SignRules;
  readonly #watched: readonly {
    readonly watcher: Watcher;
    readonly c: number;
    readonly channel: FoldChannel;
  }[];
  readonly #levels: Minute[][];
  readonly #open: (Sign | null)[];
  #block = -1;
  /** Milliseconds run without a stop. */
  #running = 0;

  constructor(plan: FoldPlan, { signs }: LogRules) {
    this.#plan = plan;
    this.#rules = signs;
    this.#watched = watchersOf(signs).flatMap((watcher) => {
      const c = plan.channels.findIndex(({ name }) => name === watcher.channel);
      return c < 0 ? [] : [{ watcher, c, channel: plan.channels[c]! }];
    });
    this.#levels = this.#watched.map(() => []);
    this.#open = this.#watched.map(() => null);
  }

  /**
   * @param block in which the frame was run
   * @param distance steps run before the frame
   * @returns the signs that show in it
   */
  next(frame: Frame, block: number, distance: number): readonly SignKind[] {
    const speed = frame.channels[0]!;
    const isRunning = speed.count > 0 && speed.min > this.#plan.standstill;
    if (!isRunning || block !== this.#block) this.#restart();
    this.#block = block;
    if (!isRunning) {
      this.#running = 0;
      return [];
    }
    this.#running += frame.time;
    for (const w of this.#watched.keys()) this.#watch(w, frame, distance);
    return this.#open.flatMap((sign) => sign?.kind ?? []);
  }

  #watch(w: number, frame: Frame, distance: number): void {
    const { watcher, c, channel } = this.#watched[w]!;
    const { count, sum } = frame.channels[c]!;
    if (count === 0) return;
    const now = valueOfSteps(channel.reference + sum / count, channel);
    const levels = this.#levels[w]!;
    const level = levels.length < LEAST ? null : middle(levels);
    const minutes = frame.minute - (levels[0]?.minute ?? frame.minute);
    const isWarm = watcher.kind !== 'temperature rises' || this.#running >= this.#rules.warm * 1000;
    if (level === null || !isWarm || !watcher.isSign(level, now, Math.max(1, minutes))) {
      this.#open[w] = null;
      levels.push({ minute: frame.minute, mean: now });
      if (levels.length > LEVEL) levels.shift();
      return;
    }
    const open = this.#open[w];
    if (open) {
      open.minutes += 1;
      return;
    }
    const { file } = frame.ranges[0]!;
    const { line, time } = frame.first;
    const sign = {
      kind: watcher.kind,
      channel: channel.name,
      file,
      line,
      time,
      distance,
      before: level,
      after: now,
      minutes: 1,
    };
    this.#open[w] = sign;
    this.count += 1;
    if (this.listed.length < LISTED_EVENTS) this.listed.push(sign);
  }

  #restart(): void {
    for (const levels of this.#levels) levels.length = 0;
    this.#open.fill(null);
  }
}

/** The upper median of a level's minutes; asked of every minute and channel, so without a list of its own. */
function middle(minutes: readonly Minute[]): number {
  for (let i = 0; i < minutes.length; i++) {
    const { mean } = minutes[i]!;
    let place = i;
    for (; place > 0 && SORTED[place - 1]! > mean; place--) SORTED[place] = SORTED[place - 1]!;
    SORTED[place] = mean;
  }
  return SORTED[Math.floor(minutes.length / 2)]!;
}

const SORTED = new Float64Array(LEVEL);
