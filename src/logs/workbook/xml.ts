import { Parser } from 'saxen';

/** One element as it ends: its name without prefix, its attributes, and the text directly inside. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/**
 * Walks a part of a workbook.
 *
 * @param open called at each start tag, before what is inside
 * @param close called at each end tag
 */
export function walkXml(
  bytes: Uint8Array,
  close: (element: Element) => void,
  open: (name: string, attributes: Readonly<Record<string, string>>) => void = () => {},
): void {
  const stack: { name: string; attributes: Record<string, string>; text: string }[] = [];
  new Parser()
    .on('openTag', (tag, attributes, decode) => {
      const decoded = Object.fromEntries(
        Object.entries(attributes()).map(([key, value]) => [bare(key, true), decode(value)]),
      );
      stack.push({ name: bare(tag), attributes: decoded, text: '' });
      open(bare(tag), decoded);
    })
    .on('text', (text, decode) => {
      const top = stack.at(-1);
      if (top) top.text += decode(text);
    })
    .on('cdata', (text) => {
      const top = stack.at(-1);
      if (top) top.text += text;
    })
    .on('closeTag', () => {
      const element = stack.pop();
      if (element) close(element);
    })
    .on('error', (error) => {
      throw error;
    })
    .parse(new TextDecoder().decode(bytes));
}

/** Prefixes differ between writers; `r:id` and `id` are told apart. */
function bare(name: string, isAttribute = false): string {
  const at = name.indexOf(':');
  if (at < 0) return name;
  return isAttribute && name.endsWith(':id') ? 'r:id' : name.slice(at + 1);
}
