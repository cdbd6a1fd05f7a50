import type { Shell } from './shell.ts';

/**
 * Colour of a stream, decided once: `--color` and `--no-color` go before NO_COLOR (not empty), that before
 * FORCE_COLOR, that before what the stream is. Reports get the level as an argument, since the colour library
 * ignores NO_COLOR and the table library colours pipes.
 */
export function colourLevel(shell: Shell, flag: boolean | undefined, stream: 'stdout' | 'stderr'): 0 | 1 {
  if (flag !== undefined) return flag ? 1 : 0;
  const { NO_COLOR, FORCE_COLOR, TERM } = shell.env;
  if (NO_COLOR) return 0;
  if (FORCE_COLOR !== undefined && FORCE_COLOR !== '') return FORCE_COLOR === '0' ? 0 : 1;
  return shell[stream].isTTY && TERM !== 'dumb' ? 1 : 0;
}

/** Columns of the terminal, 80 where there is none: text in a pipe is at most that wide. */
export function textWidth(shell: Shell): number {
  const columns = shell.stdout.isTTY ? (shell.stdout.columns ?? 80) : 80;
  return Math.min(Math.max(columns, 40), 120);
}

/** Whether the terminal can show more than ASCII: a UTF-8 locale, or none stated at all. */
export function hasUnicode(shell: Shell): boolean {
  const { LC_ALL, LC_CTYPE, LANG, TERM } = shell.env;
  if (TERM === 'linux') return false;
  const locale = LC_ALL || LC_CTYPE || LANG;
  if (!locale) return true;
  return /utf-?8/i.test(locale) || !shell.stdout.isTTY;
}
