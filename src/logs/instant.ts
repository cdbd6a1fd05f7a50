const ISO = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d+))?)?(Z|[+-]\d\d(?::?\d\d)?)$/;

/**
 * Milliseconds since 1970 UTC of an ISO 8601 time with an offset, fractions of them included; null for any other
 * text. A time without an offset is another instant in every zone, so it is none.
 */
export function instantOf(text: string): number | null {
  const found = ISO.exec(text);
  if (!found) return null;
  const [year, month, day, hour, minute, second] = found
    .slice(1, 7)
    .map((part) => Number(part ?? 0)) as number[];
  const date = new Date(0);
  date.setUTCFullYear(year!, month! - 1, day!);
  const isDay = date.getUTCMonth() === month! - 1 && date.getUTCDate() === day!;
  if (!isDay || hour! > 23 || minute! > 59 || second! > 59) return null;
  const clock = ((hour! * 60 + minute!) * 60 + second!) * 1000 + Number(`0.${found[7] ?? 0}`) * 1000;
  const offset = offsetMinutes(found[8]!);
  return offset === null ? null : date.getTime() + clock - offset * 60_000;
}

function offsetMinutes(text: string): number | null {
  if (text === 'Z') return 0;
  const digits = text.slice(1).replace(':', '');
  const hours = Number(digits.slice(0, 2));
  const minutes = Number(digits.slice(2) || 0);
  if (hours > 23 || minutes > 59) return null;
  return (text.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}
