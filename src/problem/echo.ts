/**
 * Text from a file, made safe and short enough to stand in a message: control characters, bidirectional marks
 * and line separators become `\u{…}` escapes, and what is longer than `most` characters is cut with an ellipsis.
 * Everything that comes from a log or a document passes through here before it can reach a terminal.
 */
export function echo(text: string, most = 60): string {
  const characters = Array.from(text.length > most * 4 ? text.slice(0, most * 4) : text);
  const cut = characters.length > most || text.length > most * 4;
  const shown = cut ? characters.slice(0, Math.max(1, most - 1)) : characters;
  return shown.map(printable).join('') + (cut ? '…' : '');
}

/** The echo in quotation marks, as messages show it: `"12,5"`. */
export function quote(text: string, most = 60): string {
  return `"${echo(text, most)}"`;
}

const UNPRINTABLE = /[\p{Cc}\p{Cs}\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/u;

function printable(character: string): string {
  if (!UNPRINTABLE.test(character)) return character;
  return `\\u{${character.codePointAt(0)!.toString(16)}}`;
}
