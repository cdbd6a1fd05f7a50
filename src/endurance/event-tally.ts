import type { LinkKind } from './link.ts';

/** What the fold notes beside its sums: a link that is out of the ordinary, or a row that repeats the one before. */
export type EventKind = Exclude<LinkKind, 'run'> | 'duplicate';

/** One such link, at its later row. */
export interface LogEvent {
  readonly kind: EventKind;
  /** Place of the log among the logs; 0 inside a part. */
  readonly file: number;
  readonly line: number;
  /** Milliseconds: time of the row before, and of this row. */
  readonly from: number;
  readonly to: number;
  /** Steps that the counter shows between them; NaN where it says nothing. */
  readonly gained: number;
}

/** Events of one kind: the first of them one by one, all of them in sum. */
export interface EventSums {
  count: number;
  /** Steps. */
  gained: number;
  /** Milliseconds from row to row. */
  time: number;
  last: LogEvent;
  readonly listed: LogEvent[];
}

/** So many events of a kind are kept one by one (CONTRACT: deviations beyond the first 20 are summed up). */
export const LISTED_EVENTS = 20;

/** Events by kind, in constant memory; the tallies of two neighbouring stretches add up to that of both. */
export class EventTally {
  readonly byKind: Map<EventKind, EventSums>;

  constructor(kinds: Iterable<readonly [EventKind, EventSums]> = []) {
    this.byKind = new Map(kinds);
  }

  add(event: LogEvent): void {
    const { from, to } = event;
    const gained = Number.isNaN(event.gained) ? 0 : event.gained;
    this.#put(event.kind, { count: 1, gained, time: to - from, last: event, listed: [event] });
  }

  /** Adds the tally of the stretch behind this one. */
  merge(later: EventTally): void {
    for (const [kind, sums] of later.byKind) this.#put(kind, sums);
  }

  /** The same events in a file of their own place, `lines` further down. */
  moved(file: number, lines: number): EventTally {
    return this.#each((event) => ({ ...event, file, line: event.line + lines }));
  }

  /** The same events so many milliseconds later. */
  later(shift: number): EventTally {
    return this.#each((event) => ({ ...event, from: event.from + shift, to: event.to + shift }));
  }

  #each(move: (event: LogEvent) => LogEvent): EventTally {
    const tally = new EventTally();
    for (const [kind, sums] of this.byKind) {
      tally.byKind.set(kind, { ...sums, last: move(sums.last), listed: sums.listed.map(move) });
    }
    return tally;
  }

  #put(kind: EventKind, later: EventSums): void {
    const sums = this.byKind.get(kind);
    if (!sums) {
      this.byKind.set(kind, { ...later, listed: later.listed.slice() });
      return;
    }
    sums.count += later.count;
    sums.gained += later.gained;
    sums.time += later.time;
    sums.last = later.last;
    for (const event of later.listed) if (sums.listed.length < LISTED_EVENTS) sums.listed.push(event);
  }
}
