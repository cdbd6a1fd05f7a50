import type { Zone } from '../logs/time/zone.ts';
import type { JudgedFrame } from './condition-judge.ts';
import type { EventKind } from './event-tally.ts';
import type { Frame } from './frame.ts';
import { NIGHT } from './nights.ts';
import type { FoldPlan } from './plan.ts';

/** Something that went wrong in a night, with how often it began and where first. */
export interface NightAlarm {
  readonly what: string;
  count: number;
  /** Place of the log among the logs, line and milliseconds of the first. */
  readonly file: number;
  readonly line: number;
  readonly time: number;
}

/** One night by the clock of the laboratory. */
export interface Night {
  /** Milliseconds of its begin and end. */
  readonly from: number;
  readonly to: number;
  /** Steps run, and milliseconds stood. */
  distance: number;
  stood: number;
  readonly alarms: NightAlarm[];
}

/** Nights that are told apart; a test of two weeks has 14. */
const MOST_NIGHTS = 400;
const MOST_ALARMS = 12;
const MOST_WORDS = 100;
const DAY = 86_400_000;
const MINUTE = 60_000;
/** Times before it are counted from a start that nobody stated. */
const DATED = Date.UTC(1990, 0);

const GAPS: Readonly<Partial<Record<EventKind, string>>> = {
  gap: 'nothing logged while the drum ran',
  'gap-reset': 'nothing logged, and the counter began anew',
};

/** Keeps what happened while nobody was there: how far the drum ran each night, how long it stood, and what began. */
export class NightWatch {
  readonly nights: Night[] = [];
  readonly #plan: FoldPlan;
  readonly zone: Zone | null;
  #going: ReadonlySet<string> = new Set();
  readonly #states = new Map<string, number>();

  /** @param zone of the clock in the laboratory; null where nothing tells it: no nights then */
  constructor(plan: FoldPlan, zone: Zone | null) {
    this.#plan = plan;
    this.zone = zone;
  }

  /**
   * Takes every piece of a minute that lies in one block, in order.
   *
   * @param gained steps that it brought
   */
  next(frame: Frame, judged: JudgedFrame, gained: number, signs: readonly string[]): void {
    if (this.zone === null) return;
    const going = this.#alarmsOf(frame, judged, signs);
    const before = this.#going;
    this.#going = going;
    const night = this.#nightOf(frame.first.time);
    if (!night) return;
    night.distance += gained;
    if (judged.every(({ isTurning, sums }) => !isTurning || sums.rows === 0)) night.stood += frame.time;
    for (const what of going) if (!before.has(what)) note(night, what, frame);
  }

  #alarmsOf(frame: Frame, judged: JudgedFrame, signs: readonly string[]): ReadonlySet<string> {
    const going = new Set(signs);
    for (const { sums, isTurning, channels } of judged) {
      if (sums.rows === 0) continue;
      if (!isTurning) going.add('the drum stood');
      else {
        for (const [c, state] of channels.entries()) {
          const { name } = this.#plan.channels[c]!;
          if (state === 'below' || state === 'above') going.add(`${name} ${state} its limits`);
          else if (state === 'missing' && frame.channels[c]!.count === 0)
            going.add(`${name} without a value`);
        }
      }
    }
    for (const [kind, what] of Object.entries(GAPS))
      if (frame.events?.byKind.has(kind as EventKind)) going.add(what);
    if (this.#isUnusual(frame.state) && !going.has('the drum stood')) going.add(`state ${frame.state}`);
    return going;
  }

  /** Whether a word of the state is another than that of most minutes so far. */
  #isUnusual(word: string): boolean {
    const count = (this.#states.get(word) ?? 0) + 1;
    if (this.#states.size < MOST_WORDS || this.#states.has(word)) this.#states.set(word, count);
    return count < Math.max(...this.#states.values());
  }

  #nightOf(time: number): Night | null {
    if (time < DATED) return null;
    const offset = this.zone!.offsetAt(time) * MINUTE;
    const sinceEvening = time + offset - NIGHT.begin;
    const evening = Math.floor(sinceEvening / DAY) * DAY;
    if (sinceEvening - evening >= NIGHT.length) return null;
    const from = evening + NIGHT.begin - offset;
    const last = this.nights.at(-1);
    // An hour that is put back or ahead within the night leaves it one night.
    if (last && Math.abs(last.from - from) < DAY / 2) return last;
    if (this.nights.length === MOST_NIGHTS) return null;
    const night = { from, to: from + NIGHT.length, distance: 0, stood: 0, alarms: [] };
    this.nights.push(night);
    return night;
  }
}

function note({ alarms }: Night, what: string, { ranges, first }: Frame): void {
  const known = alarms.find((alarm) => alarm.what === what);
  if (known) known.count += 1;
  else if (alarms.length < MOST_ALARMS) {
    alarms.push({ what, count: 1, file: ranges[0]!.file, line: first.line, time: first.time });
  }
}
