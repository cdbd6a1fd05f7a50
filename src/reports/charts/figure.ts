import { element, type Markup, text } from './svg.ts';

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
      'aria-labelledby': `${id}-title ${id}-text`,
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
    readonly most?: number;
  } = {},
): Markup {
  return element(
    'text',
    {
      x: style.turned ? undefined : x,
      y: style.turned ? undefined : y,
      transform: style.turned ? `translate(${x} ${y}) rotate(-90)` : undefined,
      'text-anchor': style.anchor === 'start' ? undefined : style.anchor,
      fill: style.fill,
      'font-weight': style.weight,
    },
    text(content, style.most ?? 60),
  );
}

/** A label beside a place, turned to the side where there is room, so that it stays within [left, right]. */
export function labelBeside(
  x: number,
  y: number,
  content: string,
  within: { readonly left: number; readonly right: number },
  style: { readonly fill?: string; readonly weight?: number } = {},
): Markup {
  const fits = (most: number) => x + 6 + labelWidth(content) <= most;
  return fits(within.right)
    ? label(x + 6, y, content, style)
    : label(Math.max(x - 6, within.left + labelWidth(content)), y, content, { ...style, anchor: 'end' });
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
export function labelWidth(content: string): number {
  let width = 0;
  for (const character of content) {
    const code = character.codePointAt(0)!;
    width +=
      code > 0x2e7f
        ? 1.05
        : /[ilj.,:;'|!() ]/.test(character)
          ? 0.34
          : /[A-ZMWmw%@]/.test(character)
            ? 0.78
            : 0.58;
  }
  return width * FONT_SIZE;
}
