import { echo } from '../../problem/echo.ts';
import { element, type Markup, rounded, text } from './svg.ts';

/** A chart with its words: what it is, and what a person who cannot see it would be told. */
export interface Figure {
  /** Distinct within a report; part of the ids that tie picture and words. */
  readonly id: string;
  readonly title: string;
  readonly alternative: string;
  readonly width: number;
  readonly height: number;
  readonly body: Markup;
}

/** Ink that stays apart in grey print and for the colour-blind: by lightness first, by hue second. */
export const INK = {
  text: '#1f2328',
  muted: '#57606a',
  rule: '#d0d7de',
  /** Filled is failed, hollow is survived, as the statistical literature draws them. */
  mark: '#1f2328',
  fit: '#0b5394',
  band: '#c9dcf0',
  /** From least to most, behind a mean. */
  range: '#8c959f',
  pause: '#e5e7ea',
  limit: '#9a3412',
} as const;

export const FONT_SIZE = 12;

/** Of every picture, in pixels: its letters can still be read on a phone, and it stands within an A4 column. */
export const WIDTH = 540;

/** The picture as one `<svg>` element, named for assistive technology, scaling to the room it is given. */
export function svgOf({ id, title, alternative, width, height, body }: Figure): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': `${id}-title`,
      'aria-describedby': `${id}-text`,
      'font-family': 'system-ui, sans-serif',
      'font-size': FONT_SIZE,
      fill: INK.text,
    },
    element('title', { id: `${id}-title` }, text(title)),
    element('desc', { id: `${id}-text` }, text(alternative, 1000)),
    body,
  ).markup;
}

/** A label at a place; `anchor` says which of its ends stands there. */
export function label(
  x: number,
  y: number,
  content: string,
  style: {
    readonly anchor?: 'start' | 'middle' | 'end';
    readonly fill?: string;
    readonly weight?: number;
    readonly turned?: boolean;
    /** Pixels that it may take; what is longer is cut with an ellipsis. */
    readonly room?: number;
  } = {},
): Markup {
  return element(
    'text',
    {
      x: style.turned ? undefined : x,
      y: style.turned ? undefined : y,
      transform: style.turned ? `translate(${rounded(x)} ${rounded(y)}) rotate(-90)` : undefined,
      'text-anchor': style.anchor === 'start' ? undefined : style.anchor,
      fill: style.fill,
      'font-weight': style.weight,
    },
    text(fitted(content, style), 400),
  );
}

/** A label safe to show, cut to its room with an ellipsis. */
function fitted(
  content: string,
  { room = WIDTH, weight }: { readonly room?: number; readonly weight?: number },
): string {
  const safe = Array.from(echo(content, 200));
  if (labelWidth(safe.join(''), weight) <= room) return safe.join('');
  while (safe.length > 1 && labelWidth(`${safe.join('')}…`, weight) > room) safe.pop();
  return `${safe.join('')}…`;
}

/** A label beside a place, turned to the side where there is room, so that it stays within [left, right]. */
export function labelBeside(
  x: number,
  y: number,
  content: string,
  within: { readonly left: number; readonly right: number },
  style: { readonly fill?: string; readonly weight?: number } = {},
): Markup {
  const fits = (most: number) => x + 6 + labelWidth(content, style.weight) <= most;
  return fits(within.right)
    ? label(x + 6, y, content, style)
    : label(Math.max(x - 6, within.left + labelWidth(content, style.weight)), y, content, {
        ...style,
        anchor: 'end',
      });
}

/** Places of labels one below the other, moved apart where they would touch, kept within [top, bottom] if they can be. */
export function apartBelow(wanted: readonly number[], gap: number, top: number, bottom: number): number[] {
  const order = wanted.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y || a.i - b.i);
  const placed: number[] = [];
  let next = top;
  for (const { y, i } of order) {
    placed[i] = Math.max(y, next);
    next = placed[i] + gap;
  }
  let most = bottom;
  for (const { i } of order.toReversed()) {
    placed[i] = Math.min(placed[i]!, most);
    most = placed[i] - gap;
  }
  return placed;
}

/** About how wide a label is drawn, in pixels: wide enough for any of the usual fonts. */
export function labelWidth(content: string, weight = 400): number {
  let width = 0;
  for (const character of content) {
    const code = character.codePointAt(0)!;
    if (code > 0x2e7f) width += 1.05;
    else if (/[ilj.,:;'|!() ]/.test(character)) width += 0.36;
    else if (/[MWmw%@…—]/.test(character)) width += 1;
    else width += /\p{Lu}/u.test(character) ? 0.78 : 0.63;
  }
  return width * FONT_SIZE * (weight > 400 ? 1.12 : 1);
}
