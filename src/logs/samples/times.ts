import { echo, quote } from '../../problem/echo.ts';
import { instantOf } from '../instant.ts';
import { readNumber } from '../number.ts';
import { timeFormat } from '../time/time-format.ts';
import { readWallTime, type TimeRule, timeExpectation } from '../time/time-rule.ts';
import { type Zone, zoneOf } from '../time/zone.ts';
import type { SampleDialect, WrittenTime } from './dialect.ts';

/** Patterns of which the first 16 characters are date, hour and minute, and the seconds follow behind a colon. */
const MINUTE_FIRST = /^(?:YYYY.MM.DD|DD.MM.YYYY|MM.DD.YYYY).hh:mm:ss(?:[.,]f)?Z?$/u;
const FIXED = /^(?:Z|[+-]\d\d:?\d\d)$/u;

/** What stands in a cell of times, read by the dialect; made anew in every thread. */
export class SampleTimes {
  /** Whether a minute once read serves all its seconds. */
  readonly isByMinute: boolean;
  /** Whether all minutes of an hour have one offset. */
  readonly isSteady: boolean;
  /** Mark before the fraction of a second. */
  readonly mark: '.' | ',';
  readonly #offset: string | null;
  readonly #rule: TimeRule | null;
  readonly #decimal: '.' | ',';

  constructor({ time, offset, decimal }: SampleDialect) {
    this.#offset = offset;
    this.#decimal = decimal;
    this.#rule = time && ruleOf(time);
    const pattern = time?.kind === 'clock' ? time.pattern : null;
    this.isByMinute = time === null || (pattern !== null && MINUTE_FIRST.test(pattern));
    this.mark = pattern?.includes('ss,f') ? ',' : '.';
    const zone = time !== null && 'zone' in time ? time.zone : null;
    this.isSteady = zone === null || FIXED.test(zone);
  }

  /**
   * Milliseconds since 1970, not rounded; null where the text is no such time. In the hour that autumn doubles it is
   * the first time round: only the rows before tell, and `DoubledHour` looks at those.
   */
  instant(text: string): number | null {
    const rule = this.#rule;
    if (rule === null)
      return instantOf(text) ?? (this.#offset === null ? null : instantOf(text + this.#offset));
    const wall = this.#wall(text, rule);
    if (wall === null) return null;
    const offset = wall.offset ?? zoneIn(rule)?.offsetsAt(wall.wall)[0];
    if (offset === undefined) return null;
    return wall.wall - offset * 60_000 + Number(`0.${wall.fraction || 0}`) * 1000;
  }

  /** Whether the clock shows this time twice, an hour apart, and the text does not say which is meant. */
  isOpen(text: string): boolean {
    const rule = this.#rule;
    const wall = rule && this.#wall(text, rule);
    return wall !== null && wall.offset === null && (zoneIn(rule!)?.offsetsAt(wall.wall).length ?? 0) > 1;
  }

  /** What is wrong with a text that is no time, and the key that settles it. */
  problem(text: string): { readonly code: string; readonly message: string } {
    const rule = this.#rule;
    if (rule === null) return plainProblem(text);
    const zone = zoneIn(rule);
    if (zone && this.#wall(text, rule) !== null) {
      const message = `found ${quote(text)}, a time that the clock of ${echo(zone.name)} leaves out in spring, expected one that it shows; the profile gives the rig's zone, or a fixed offset (export.time.zone)`;
      return { code: 'no-such-time', message };
    }
    const message = `found ${quote(text)}, expected ${timeExpectation(rule)}; correct it, or the profile (export.time.format)`;
    return { code: 'not-a-time', message };
  }

  #wall(text: string, rule: TimeRule) {
    const number = (cell: string): number | null => {
      const read = readNumber(cell, this.#decimal);
      return typeof read === 'number' ? read : null;
    };
    return readWallTime(text, rule, number, null);
  }
}

function zoneIn(rule: TimeRule): Zone | null {
  return 'zone' in rule ? rule.zone : null;
}

/** Names have been looked at when the profile was read, so each is one. */
function ruleOf(time: WrittenTime): TimeRule {
  switch (time.kind) {
    case 'clock': {
      const format = timeFormat(time.pattern);
      if ('wrong' in format) throw new RangeError(format.wrong);
      return { kind: 'clock', format, zone: time.zone === null ? null : zoneOf(time.zone) };
    }
    case 'seconds':
      return time;
    default:
      return { ...time, zone: zoneOf(time.zone)! };
  }
}

function plainProblem(text: string): { code: string; message: string } {
  if (instantOf(`${text}Z`) !== null) {
    const message =
      `found the time ${quote(text)} without an offset, expected one such as ${quote(`${text}+01:00`)}; ` +
      'where the rig writes none, its profile names the zone of its clock (export.time)';
    return { code: 'missing-offset', message };
  }
  const message = `found ${quote(text)}, expected an ISO 8601 time with offset such as "2026-03-02T06:00:00+01:00"; another form is the profile's to say (export.time.format)`;
  return { code: 'not-a-time', message };
}
