/** A document before it is set as text: its schema, and whatever else it has. */
export interface JsonRecord {
  readonly schema: string;
  readonly [key: string]: unknown;
}

/** Objects and lists that fit into so many characters stand on one line. */
const ONE_LINE = 160;

/**
 * A value as JSON that a person can read too: short objects on one line, the rest indented by two, a newline at the
 * end. Numbers that are not finite become null, a negative nought a nought, keys without a value are left out, and
 * characters that could steer a terminal or turn the direction of a line are written as escapes.
 */
export function jsonText(value: unknown): string {
  const out = new Pieces();
  put(value, '', out);
  return out.text();
}

/** The same value on one line, as programs read it from a pipe; no newline at the end. */
export function jsonLine(value: unknown): string {
  return JSON.stringify(value).replace(UNSAFE, escaped);
}

/** Pieces of a text, put together some thousand at a time: a long result has a million of them. */
class Pieces {
  #text = '';
  #pieces: string[] = [];

  push(...pieces: string[]): void {
    for (const piece of pieces) this.#pieces.push(piece);
    if (this.#pieces.length > 8192) this.#settle();
  }

  text(): string {
    this.#settle();
    return `${this.#text}\n`;
  }

  #settle(): void {
    this.#text += this.#pieces.join('').replace(UNSAFE, escaped);
    this.#pieces = [];
  }
}

function put(value: unknown, indent: string, out: Pieces): void {
  if (value === null || typeof value !== 'object') {
    out.push(JSON.stringify(value) ?? 'null');
    return;
  }
  const short = oneLine(value, ONE_LINE - indent.length);
  if (short !== null) {
    out.push(short);
    return;
  }
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  out.push(isList ? '[' : '{');
  let first = true;
  for (const [key, part] of isList ? value.entries() : Object.entries(value)) {
    if (part === undefined && !isList) continue;
    out.push(first ? '\n' : ',\n', inner);
    first = false;
    if (!isList) out.push(JSON.stringify(key), ': ');
    put(part, inner, out);
  }
  out.push(`\n${indent}`, isList ? ']' : '}');
}

/** The value on one line, or null as soon as it is longer than the room. */
function oneLine(value: unknown, room: number): string | null {
  if (value === null || typeof value !== 'object') {
    const text = JSON.stringify(value) ?? 'null';
    return text.length <= room ? text : null;
  }
  const isList = Array.isArray(value);
  const parts: string[] = [];
  let left = room - 4;
  for (const [key, part] of isList ? value.entries() : Object.entries(value)) {
    if (part === undefined && !isList) continue;
    const name = isList ? '' : `${JSON.stringify(key)}: `;
    const text = oneLine(part, left - name.length);
    if (text === null) return null;
    parts.push(name + text);
    left -= name.length + text.length + 2;
  }
  if (parts.length === 0) return isList ? '[]' : '{}';
  return isList ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`;
}

const UNSAFE = /[\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/gu;

function escaped(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
