import type { ExportProfile } from '../logs/export/profile.ts';
import { instantOf } from '../logs/instant.ts';
import { timeFormat } from '../logs/time/time-format.ts';
import type { TimeRule } from '../logs/time/time-rule.ts';
import { type Zone, zoneOf } from '../logs/time/zone.ts';
import { quote } from '../problem/echo.ts';
import type { Path } from './yaml-value.ts';

interface TimeFields {
  readonly format: string;
  readonly zone?: string | undefined;
  readonly start?: string | { readonly key: string } | undefined;
  readonly rebuild?: 'uptime' | undefined;
}

type Report = (path: Path, code: string, message: string) => void;

/** How times are written, by the `time` block; what would make two instants of one text is found. */
export function exportTime(
  fields: TimeFields | undefined,
  columns: ExportProfile['columns'],
  at: Report,
): TimeRule | null {
  if (fields === undefined) {
    if (columns.has('date')) {
      const message =
        'found a column of dates and no format, expected one for date and time together; add export.time.format';
      at(['columns', 'date'], 'missing-key', message);
    }
    return null;
  }
  const { format } = fields;
  if (fields.rebuild !== undefined && !columns.has('uptime')) {
    const message =
      'found no column of the seconds that the rig counts, expected one to rebuild times from; add export.columns.uptime';
    at(['time', 'rebuild'], 'missing-key', message);
  }
  if (format === 'seconds') return seconds(fields, at);
  if (fields.start !== undefined) {
    at(
      ['time', 'start'],
      'out-of-place',
      'found a start, which only the format "seconds" counts from; remove it',
    );
  }
  if (format === 'serial-1900' || format === 'serial-1904') {
    const zone = zoneNeeded(fields, at);
    return zone && { kind: 'serial', base: format === 'serial-1900' ? 1900 : 1904, zone };
  }
  if (format === 'date-cells') {
    const zone = zoneNeeded(fields, at);
    return zone && { kind: 'date-cells', zone };
  }
  return clock(fields, at);
}

function clock(fields: TimeFields, at: Report): TimeRule | null {
  const format = timeFormat(fields.format);
  if ('wrong' in format) {
    at(['time', 'format'], 'bad-format', `${format.wrong}; correct the format`);
    return null;
  }
  if (!format.hasOffset) {
    const zone = zoneNeeded(fields, at);
    return zone && { kind: 'clock', format, zone };
  }
  if (fields.zone !== undefined) {
    const message = 'found a zone beside a format with an offset (Z), expected one of them; remove one';
    at(['time', 'zone'], 'two-ways', message);
  }
  return { kind: 'clock', format, zone: null };
}

function seconds({ start, zone }: TimeFields, at: Report): TimeRule | null {
  if (zone !== undefined) {
    at(['time', 'zone'], 'out-of-place', 'found a zone, which seconds from a start do not need; remove it');
  }
  if (start === undefined) {
    const message = 'found no start, expected the instant that the seconds count from; add export.time.start';
    at(['time'], 'missing-key', message);
    return null;
  }
  if (typeof start !== 'string') return { kind: 'seconds', start };
  const instant = instantOf(start);
  if (instant === null) {
    at(
      ['time', 'start'],
      'bad-value',
      `found ${quote(start)}, expected ISO 8601 with its offset, such as 2026-03-09T08:00:00+01:00`,
    );
    return null;
  }
  return { kind: 'seconds', start: instant };
}

function zoneNeeded({ zone }: TimeFields, at: Report): Zone | null {
  if (zone === undefined) {
    const message =
      'found no zone, expected that of the clock, such as Europe/Berlin or +01:00; add export.time.zone';
    at(['time'], 'missing-key', message);
    return null;
  }
  const known = zoneOf(zone);
  if (!known) {
    at(
      ['time', 'zone'],
      'unknown-zone',
      `found ${quote(zone)}, expected an IANA zone such as Europe/Berlin, or an offset such as +01:00; correct it`,
    );
  }
  return known;
}
