import { instantOf } from '../instant.ts';
import type { TimeFormat, WallTime } from './time-format.ts';
import type { Zone } from './zone.ts';

/** How a rig writes times. */
export type TimeRule =
  | { readonly kind: 'clock'; readonly format: TimeFormat; readonly zone: Zone | null }
  /** Days since the end of 1899, or since 1904, as spreadsheets count. */
  | { readonly kind: 'serial'; readonly base: 1900 | 1904; readonly zone: Zone }
  /** Date cells of a workbook. */
  | { readonly kind: 'date-cells'; readonly zone: Zone }
  /** Seconds since an instant, or since the one that a line before the header states. */
  | { readonly kind: 'seconds'; readonly start: number | { readonly key: string } };

const DAY = 86_400_000;
const BASE = { 1900: Date.UTC(1899, 11, 30), 1904: Date.UTC(1904, 0, 1) };
/** 1954 to 2119 by the older base: outside it the number is no day of a test. */
const EARLIEST = 20_000;
const LATEST = 80_000;

/**
 * The wall time that a cell holds by its rule, or null where it holds none.
 *
 * @param number reads a number as the export writes it
 * @param start the instant (ms) that `seconds` count from
 */
export function readWallTime(
  text: string,
  rule: TimeRule,
  number: (text: string) => number | null,
  start: number | null,
): WallTime | null {
  switch (rule.kind) {
    case 'clock':
      return rule.format.read(text);
    case 'date-cells': {
      const instant = instantOf(`${text}Z`);
      return instant === null ? null : wallOf(instant, null);
    }
    case 'serial': {
      const days = number(text);
      if (days === null || days < EARLIEST || days > LATEST) return null;
      return wallOf(Math.round(BASE[rule.base] + days * DAY), null);
    }
    case 'seconds': {
      const seconds = number(text);
      if (seconds === null || start === null) return null;
      return wallOf(Math.round(start + seconds * 1000), 0);
    }
  }
}

function wallOf(milliseconds: number, offset: number | null): WallTime {
  const rest = ((milliseconds % 1000) + 1000) % 1000;
  return {
    wall: milliseconds - rest,
    fraction: rest === 0 ? '' : String(rest).padStart(3, '0').replace(/0+$/, ''),
    offset,
  };
}

/** What a cell should have held, for messages. */
export function timeExpectation(rule: TimeRule): string {
  switch (rule.kind) {
    case 'clock':
      return `a time as "${rule.format.pattern}"`;
    case 'date-cells':
      return 'a date cell';
    case 'serial':
      return `days since ${rule.base} between ${EARLIEST} and ${LATEST}`;
    case 'seconds':
      return 'seconds since the start';
  }
}
