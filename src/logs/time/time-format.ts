import { monthOf } from './months.ts';
import { isWeekday } from './weekdays.ts';

/** A time as a clock on the wall shows it. */
export interface WallTime {
  /** Milliseconds since 1970 as if the clock showed UTC, without the fraction of a second. */
  readonly wall: number;
  /** Digits behind the second, as written; empty without them. */
  readonly fraction: string;
  /** Minutes east of UTC where the text says so. */
  readonly offset: number | null;
}

type Part =
  | 'year'
  | 'month'
  | 'day'
  | 'hour'
  | 'minute'
  | 'second'
  | 'fraction'
  | 'half'
  | 'offset'
  | 'weekday';

interface Token {
  readonly part: Part;
  readonly pattern: string;
  /** Year of two digits, month by name, hour of twelve. */
  readonly kind?: 'short' | 'name';
}

/** Longest first: `MMM` must not be read as `MM` and `M`. */
const TOKENS: Readonly<Record<string, Token>> = {
  YYYY: { part: 'year', pattern: '(\\d{4})' },
  YY: { part: 'year', pattern: '(\\d{2})', kind: 'short' },
  MMM: { part: 'month', pattern: '(\\p{L}{3,12}\\.?)', kind: 'name' },
  MM: { part: 'month', pattern: '(\\d{2})' },
  M: { part: 'month', pattern: '(\\d{1,2})' },
  DD: { part: 'day', pattern: '(\\d{2})' },
  D: { part: 'day', pattern: '(\\d{1,2})' },
  hh: { part: 'hour', pattern: '(\\d{2})' },
  h: { part: 'hour', pattern: '(\\d{1,2})' },
  mm: { part: 'minute', pattern: '(\\d{2})' },
  ss: { part: 'second', pattern: '(\\d{2})' },
  f: { part: 'fraction', pattern: '(\\d{1,9})' },
  AP: { part: 'half', pattern: '([AaPp]\\.?[Mm]\\.?|上午|下午|午前|午後)' },
  ddd: { part: 'weekday', pattern: '(\\p{L}{1,12}\\.?)' },
  Z: { part: 'offset', pattern: '(Z|[+-]\\d\\d:?\\d\\d)' },
};
const SPELLING = /YYYY|YY|MMM|MM|M|DD|D|hh|h|mm|ss|f|AP|ddd|Z/gu;

/** A pattern such as `DD.MM.YYYY hh:mm:ss`, ready to read times. */
export interface TimeFormat {
  readonly pattern: string;
  readonly hasOffset: boolean;
  read(text: string): WallTime | null;
}

/** The words of the pattern language, for messages. */
export const TIME_TOKENS = Object.keys(TOKENS).join(' ');

/** The format that a pattern means, or one sentence why it means none or more than one. */
export function timeFormat(pattern: string): TimeFormat | { readonly wrong: string } {
  const parts: { part: Part; kind: Token['kind'] }[] = [];
  let source = '';
  let at = 0;
  for (const match of pattern.matchAll(SPELLING)) {
    source += literal(pattern.slice(at, match.index));
    const token = TOKENS[match[0]]!;
    source += token.pattern;
    parts.push({ part: token.part, kind: token.kind });
    at = match.index + match[0].length;
  }
  source += literal(pattern.slice(at));
  const wrong = faultOf(
    pattern,
    parts.map(({ part }) => part),
    pattern.replaceAll(SPELLING, ''),
  );
  if (wrong !== null) return { wrong };
  const regexp = new RegExp(`^${source}$`, 'u');
  return {
    pattern,
    hasOffset: parts.some(({ part }) => part === 'offset'),
    read(text) {
      const found = regexp.exec(text);
      return (
        found && wallTime(new Map(parts.map(({ part, kind }, i) => [part, { text: found[i + 1]!, kind }])))
      );
    },
  };
}

function literal(text: string): string {
  return text.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&').replaceAll(/\s+/g, '\\s+');
}

function faultOf(pattern: string, parts: readonly Part[], rest: string): string | null {
  const twice = parts.find((part, i) => parts.indexOf(part) < i);
  if (twice) return `"${pattern}" has the ${twice} twice`;
  const missing = (['year', 'month', 'day', 'hour', 'minute'] as const).filter(
    (part) => !parts.includes(part),
  );
  if (missing.length > 0)
    return `"${pattern}" has no ${missing.join(', no ')} (its words are ${TIME_TOKENS})`;
  const strange = /[A-Za-z]/.exec(rest.replaceAll('T', ''));
  if (strange) return `"${pattern}" has the unknown word "${strange[0]}" (the words are ${TIME_TOKENS})`;
  return null;
}

function wallTime(parts: ReadonlyMap<Part, { text: string; kind: Token['kind'] }>): WallTime | null {
  const number = (part: Part) => Number(parts.get(part)?.text ?? 0);
  const year = parts.get('year')!.kind === 'short' ? 2000 + number('year') : number('year');
  const monthPart = parts.get('month')!;
  const month = monthPart.kind === 'name' ? monthOf(monthPart.text) : number('month');
  const hour = hourOf(number('hour'), parts.get('half')?.text ?? null);
  if (month === null || hour === null || number('minute') > 59 || number('second') > 59) return null;
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, number('day'));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== number('day')) return null;
  const weekday = parts.get('weekday')?.text;
  if (weekday !== undefined && !isWeekday(weekday, date.getUTCDay())) return null;
  const clock = ((hour * 60 + number('minute')) * 60 + number('second')) * 1000;
  const offset = parts.get('offset')?.text;
  return {
    wall: date.getTime() + clock,
    fraction: parts.get('fraction')?.text ?? '',
    offset: offset === undefined ? null : offsetOf(offset),
  };
}

/** Twelve at noon is 12 PM, an hour later 1 PM; null where the clock has no such hour. */
function hourOf(hour: number, half: string | null): number | null {
  if (half === null) return hour > 23 ? null : hour;
  if (hour < 1 || hour > 12) return null;
  const isLater = /^p|下午|午後/i.test(half);
  return (hour % 12) + (isLater ? 12 : 0);
}

/** Minutes east of UTC of `Z`, `+01:00`, `-0530`. */
export function offsetOf(text: string): number {
  if (text === 'Z') return 0;
  const digits = text.slice(1).replace(':', '');
  return (text.startsWith('-') ? -1 : 1) * (Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2)));
}
