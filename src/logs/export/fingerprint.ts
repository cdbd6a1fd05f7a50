import { createHash } from 'node:crypto';

/**
 * A short name for a header: the first 16 hexadecimal digits of the SHA-256 of its names, each without white space
 * around it and with single spaces inside, in Unicode's composed form. Another rig's export has another one.
 */
export function headerFingerprint(cells: readonly string[]): string {
  const names = cells.map(normalName).join('\u001f');
  return createHash('sha256').update(names).digest('hex').slice(0, 16);
}

/** A header's or profile's name as both are compared. */
export function normalName(text: string): string {
  return text.replaceAll(/\s+/gu, ' ').trim().normalize('NFC');
}
