import { echo } from '../../problem/echo.ts';

/** A finished piece of markup: made by `element` and `text` only, so that nothing foreign gets in unescaped. */
export interface Markup {
  readonly markup: string;
}

type Attributes = Readonly<Record<string, string | number | undefined>>;

/**
 * One element with its attributes and children. Numbers are rounded to a hundredth of a pixel, so that a picture is the
 * same bytes wherever it is drawn; an attribute that is undefined is left out.
 */
export function element(name: string, attributes: Attributes, ...children: readonly Markup[]): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? rounded(value) : escaped(String(value))}"`)
    .join('');
  if (children.length === 0) return { markup: `<${name}${written}/>` };
  return { markup: `<${name}${written}>${children.map(({ markup }) => markup).join('')}</${name}>` };
}

/** Text that may come from anywhere: control and direction characters shown, markup escaped, length bounded. */
export function text(content: string, most = 200): Markup {
  return { markup: escaped(echo(content, most)) };
}

/** Several pieces as one, without an element around them. */
export function together(...pieces: readonly Markup[]): Markup {
  return { markup: pieces.map(({ markup }) => markup).join('') };
}

/** Text as it may stand in XML and HTML, in content and in quoted attributes. */
export function escaped(content: string): string {
  return content.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

/** A coordinate with at most two decimals. */
export function rounded(value: number): string {
  const shortened = Math.round(value * 100) / 100;
  return Number.isFinite(shortened) ? String(shortened === 0 ? 0 : shortened) : '0';
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
