import { ByteReader, type LogSource } from './bytes.ts';

const TIME = /\d{4}-\d\d-\d\d[T ]\d\d:\d\d(?::\d\d(?:[.,]\d+)?)?([+-]\d\d:?\d\d)/u;

/**
 * The offset from UTC that a log writes behind the first of its times, `+01:00`: where its clock stands. Null where the
 * first piece of the file has no such time, or writes `Z`, which says nothing of the place.
 */
export async function writtenOffset(source: LogSource): Promise<string | null> {
  for await (const chunk of new ByteReader(source)) {
    // Digits and signs are the same bytes in every encoding of a log, but for noughts between them.
    const text = Buffer.from(chunk).toString('latin1').replaceAll('\0', '');
    return TIME.exec(text)?.[1] ?? null;
  }
  return null;
}
