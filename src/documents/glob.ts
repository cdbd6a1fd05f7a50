import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';

/**
 * Whether a word of the command line asks for files by a pattern: it has `*`, `?` or `[`, and no file is called so. The
 * shell unfolds patterns as a rule; what is quoted, or too long for a command line, comes here.
 */
export function isPattern(word: string): boolean {
  return /[*?[]/.test(word) && !existsSync(word);
}

/**
 * Files by their names or by patterns: `*` and `?` stand for any characters of a name, `[…]` for one of several, `**`
 * for folders of any depth. Files of a pattern come in the order of their paths, hidden ones only where the pattern has
 * the dot; a file that is asked for twice comes once.
 *
 * @throws InputError for patterns that no file fits.
 */
export function filesOf(words: readonly string[]): string[] {
  const problems: Problem[] = [];
  const files = words.flatMap((word) => {
    if (!isPattern(word)) return [word];
    const found = unfold(word);
    if (found.length === 0) {
      const message = `found no file that fits ${quote(word)}; correct the pattern, or name the files`;
      problems.push({ file: word, line: null, column: null, code: 'no-file-fits', message });
    }
    return found;
  });
  if (problems.length > 0) throw new InputError(problems);
  return [...new Set(files)];
}

function unfold(pattern: string): string[] {
  const isAbsolute = pattern.startsWith('/');
  const parts = pattern.split('/').filter((part) => part !== '');
  const found = new Set<string>();
  descend(isAbsolute ? '/' : '', parts, found);
  return [...found].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
}

function descend(folder: string, [part, ...rest]: readonly string[], into: Set<string>): void {
  if (part === undefined) return;
  if (part === '**') {
    descend(folder, rest, into);
    for (const entry of entriesOf(folder)) {
      if (entry.isDirectory() && !entry.name.startsWith('.'))
        descend(join(folder, entry.name), [part, ...rest], into);
    }
    return;
  }
  if (!/[*?[]/.test(part)) {
    const path = join(folder, part);
    if (rest.length > 0) descend(path, rest, into);
    else if (existsSync(path)) into.add(path);
    return;
  }
  const fits = expressionOf(part);
  for (const entry of entriesOf(folder)) {
    if (!fits.test(entry.name) || (entry.name.startsWith('.') && !part.startsWith('.'))) continue;
    const path = join(folder, entry.name);
    if (rest.length > 0) descend(path, rest, into);
    else if (!entry.isDirectory()) into.add(path);
  }
}

/** Empty where there is no such folder, or it may not be read: no file of it fits. */
function entriesOf(folder: string) {
  try {
    return readdirSync(folder === '' ? '.' : folder, { withFileTypes: true });
  } catch {
    return [];
  }
}

function expressionOf(part: string): RegExp {
  const source = part.replace(
    /\*+|\?|\[(!?)([^\]/]+)\]|[.+^${}()|[\]\\]/g,
    (sign, not?: string, one?: string) => {
      if (sign.startsWith('*')) return '.*';
      if (sign === '?') return '.';
      if (one !== undefined) return `[${not ? '^' : ''}${one.replace(/[\\\]^]/g, '\\$&')}]`;
      return `\\${sign}`;
    },
  );
  return new RegExp(`^${source}$`, 'su');
}
