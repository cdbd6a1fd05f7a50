import stringWidth from 'string-width';

/** Columns that a text takes on a terminal: wide characters two, combining ones none; the table library's measure. */
export function displayWidth(text: string): number {
  return stringWidth(text);
}

/**
 * Breaks a text at its spaces into lines of at most `width` columns (the first of `firstWidth`); a word that is
 * longer than a line is broken where the line ends. A number keeps its unit beside it.
 */
export function wrap(text: string, firstWidth: number, width = firstWidth): string[] {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  const room = () => (lines.length === 0 ? firstWidth : width);
  const close = () => {
    lines.push(line.replaceAll(GLUE, ' '));
    line = '';
    used = 0;
  };
  for (const whole of glued(text).split(' ')) {
    if (whole === '') continue;
    let word = whole;
    let size = displayWidth(word);
    if (used > 0 && used + 1 + size > room()) close();
    while (size > room()) {
      const part = head(word, room());
      line = part;
      close();
      word = word.slice(part.length);
      size = displayWidth(word);
    }
    if (size === 0) continue;
    line += used > 0 ? ` ${word}` : word;
    used += (used > 0 ? 1 : 0) + size;
  }
  if (used > 0) close();
  return lines;
}

const GLUE = '\u00a0';

function glued(text: string): string {
  return text.replace(
    /(\d) (?=(?:J|mm|km|kg|g|%|bar|°C|m\/s2|m\/s²|tyres?|drops?)(?![\p{L}\d]))/gu,
    `$1${GLUE}`,
  );
}

/** The longest beginning of a text that fits, at least one character; combining marks stay with their letter. */
function head(text: string, width: number): string {
  let end = 0;
  let used = 0;
  for (const character of text) {
    const size = displayWidth(character);
    if (end > 0 && used + size > width) break;
    used += size;
    end += character.length;
  }
  return text.slice(0, end);
}
