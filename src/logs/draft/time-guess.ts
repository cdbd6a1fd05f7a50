/** Formats that a sample's times may have. */
const FORMATS: readonly { readonly pattern: RegExp; readonly formats: readonly string[] }[] = [
  { pattern: /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d.*(?:Z|[+-]\d\d:?\d\d)$/, formats: ['iso'] },
  { pattern: /^\d{4}-\d\d-\d\d \d\d:\d\d:\d\d\.\d+$/, formats: ['YYYY-MM-DD hh:mm:ss.f'] },
  { pattern: /^\d{4}-\d\d-\d\d \d\d:\d\d:\d\d$/, formats: ['YYYY-MM-DD hh:mm:ss'] },
  { pattern: /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/, formats: ['YYYY-MM-DDThh:mm:ss'] },
  { pattern: /^\d{4}-\d\d-\d\d[ ]\d\d:\d\d$/, formats: ['YYYY-MM-DD hh:mm'] },
  { pattern: /^\d\d\.\d\d\.\d{4} \d\d:\d\d:\d\d$/, formats: ['DD.MM.YYYY hh:mm:ss', 'MM.DD.YYYY hh:mm:ss'] },
  { pattern: /^\d\d\.\d\d\.\d{4} \d\d:\d\d$/, formats: ['DD.MM.YYYY hh:mm', 'MM.DD.YYYY hh:mm'] },
  {
    pattern: /^\d{1,2}\/\d{1,2}\/\d{4} \d{1,2}:\d\d:\d\d$/,
    formats: ['D/M/YYYY h:mm:ss', 'M/D/YYYY h:mm:ss'],
  },
  { pattern: /^\d{1,2}\/\d{1,2}\/\d{4} \d{1,2}:\d\d$/, formats: ['D/M/YYYY h:mm', 'M/D/YYYY h:mm'] },
  {
    pattern: /^\d{1,2}\/\d{1,2}\/\d{4} \d{1,2}:\d\d:\d\d [AaPp]\.?[Mm]\.?$/,
    formats: ['D/M/YYYY h:mm:ss AP', 'M/D/YYYY h:mm:ss AP'],
  },
  {
    pattern: /^\d{1,2}\/\d{1,2}\/\d{4} \d{1,2}:\d\d [AaPp]\.?[Mm]\.?$/,
    formats: ['D/M/YYYY h:mm AP', 'M/D/YYYY h:mm AP'],
  },
  { pattern: /^\d{4}年\d{1,2}月\d{1,2}日 \d{1,2}:\d\d$/, formats: ['YYYY年M月D日 h:mm'] },
  { pattern: /^[3-6]\d{4}[.,]\d+$/, formats: ['serial-1900', 'serial-1904'] },
  { pattern: /^\d+(?:[.,]\d+)?$/, formats: ['seconds'] },
];

/** A day of the week in front of a date. */
const BY_NAME = /^\p{L}{1,12}\.?(,?)\s+(?=\d)/u;

/**
 * Formats that all of the times fit; several where the cells leave the order of day and month open, none where the
 * texts are of no known form. A day beyond twelve settles the order.
 */
export function timeFormats(times: readonly string[]): readonly string[] {
  const [, comma] = BY_NAME.exec(times[0] ?? '') ?? [];
  if (comma !== undefined && times.every((text) => BY_NAME.exec(text)?.[1] === comma)) {
    const days = timeFormats(times.map((text) => text.replace(BY_NAME, '')));
    return days.map((format) => `ddd${comma} ${format}`);
  }
  const found = FORMATS.find(({ pattern }) => times.every((text) => pattern.test(text)));
  if (!found || times.length === 0) return [];
  if (found.formats.length !== 2 || found.formats[0]!.startsWith('serial')) return found.formats;
  const parts = times.map((text) => /^(\d+)\D(\d+)/.exec(text)!);
  if (parts.some(([, first]) => Number(first) > 12)) return [found.formats[0]!];
  return parts.some(([, , second]) => Number(second) > 12) ? [found.formats[1]!] : found.formats;
}
