import { createHash } from 'node:crypto';
import { echo } from '../../problem/echo.ts';
import { svgOf } from '../charts/figure.ts';
import { text as anyText, element, escaped, type Markup, together } from '../charts/svg.ts';
import type { Block, Cell, ReportDocument } from '../document/blocks.ts';
import { cssString, styleOf } from './style.ts';

/** Nothing may be loaded, run or sent from a report; its one style is allowed by its hash. */
const policy = (style: string) =>
  `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; img-src data:; base-uri 'none'; form-action 'none'`;

/** How long a text may be where it stands; more of it is cut with an ellipsis. */
const MOST = { title: 160, heading: 120, paragraph: 1500, item: 600, cell: 320, whole: 24 } as const;

/**
 * A report as one HTML file: no script, nothing from outside, readable without a network, made to be printed. All text
 * is escaped, whatever it says.
 */
export function html(document: ReportDocument): string {
  const { language, kind, title, name, subtitle, blocks, end } = document;
  const page = language.words.texts.page('" counter(page) "', '" counter(pages) "');
  const style = styleOf(kind, cssString(`${title} ${name}`.slice(0, 64)), `"${page}"`);
  const context: Context = { code: language.code, missing: language.words.items.missing };
  const body = together(
    element('header', {}, element('h1', {}, text(title, MOST.title)), element('p', {}, text(subtitle, 300))),
    element('main', {}, ...blocks.map((block) => drawn(block, context))),
    element('p', { class: 'end' }, text(end, MOST.heading)),
  );
  return `<!DOCTYPE html>
<html lang="${language.code}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy(style))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${text(`${title} ${name}`, MOST.title).markup}</title>
<style>${style}</style>
</head>
<body>
${body.markup}
</body>
</html>
`;
}

/** Text whose numbers stay on one line with their units. */
function text(content: string, most?: number): Markup {
  return anyText(
    content.replace(
      /(?<=\d) (?=(?:%|J|J\/kg|mm|g|kg|km|km\/h|mm\/1000km|bar|°C|m\/s²|N|h)(?![\p{L}\d]))/gu,
      '\u00a0',
    ),
    most,
  );
}

interface Context {
  readonly code: string;
  readonly missing: string;
}

function drawn(block: Block, context: Context): Markup {
  const record = (isRecord?: boolean) => (isRecord && context.code !== 'en' ? { lang: 'en' } : {});
  switch (block.kind) {
    case 'heading':
      return element(`h${block.level}`, {}, text(block.text, MOST.heading));
    case 'paragraph':
      return element('p', { class: block.tone, ...record(block.isRecord) }, text(block.text, MOST.paragraph));
    case 'verdict':
      return element('p', { class: `stamp ${block.verdict}` }, text(block.text, MOST.paragraph));
    case 'list':
      return element(
        'ul',
        {},
        ...block.items.map((item) => element('li', record(item.isRecord), text(item.text, MOST.item))),
      );
    case 'table':
      return tableOf(block, record);
    case 'terms':
      return element(
        'dl',
        {},
        ...block.rows.map(({ term, text: content }) =>
          together(
            element('dt', {}, text(term, MOST.heading)),
            content === null
              ? element('dd', { class: 'missing' }, text(context.missing))
              : element('dd', {}, text(content, MOST.paragraph)),
          ),
        ),
      );
    case 'figure':
      return element(
        'figure',
        {},
        { markup: svgOf(block.figure) },
        element(
          'figcaption',
          {},
          element('b', {}, text(`${block.figure.title}. `)),
          text(block.figure.alternative, 1000),
        ),
      );
    case 'photos':
      return element(
        'div',
        { class: 'photos' },
        ...block.photos.map(({ type, base64, caption }) =>
          element(
            'figure',
            {},
            element('img', { src: `data:${type};base64,${base64}`, alt: echo(caption, 200) }),
            element('figcaption', {}, text(caption, 200)),
          ),
        ),
      );
    case 'columns':
      return element(
        'div',
        { class: block.isFirstWide ? 'columns wide' : 'columns' },
        ...block.columns.map((column) => element('div', {}, ...column.map((inner) => drawn(inner, context)))),
      );
  }
}

function tableOf(
  { caption, columns, rows, below }: Extract<Block, { kind: 'table' }>,
  record: (isRecord?: boolean) => { lang?: string },
): Markup {
  const align = (i: number) => columns[i]?.align;
  const classOf = (cell: Cell, i: number) => {
    if (cell.isHash) return 'hash';
    if (cell.isMissing) return 'missing';
    if (cell.verdict !== undefined)
      return cell.verdict === 'pass' || cell.verdict === 'fail' ? cell.verdict : 'other';
    // Numbers and short words of our own stay on one line; whatever is longer is foreign, and breaks where it must.
    const isWhole = (cell.isWhole === true || align(i) === 'right') && cell.text.length <= MOST.whole;
    return (
      [align(i), isWhole ? 'whole' : undefined].filter((name) => name !== undefined).join(' ') || undefined
    );
  };
  const heads = columns.map(({ head }, i) =>
    element('th', { scope: 'col', class: align(i) }, text(head, MOST.heading)),
  );
  const body = rows.map((row) =>
    element(
      'tr',
      {},
      ...row.map((cell, i) =>
        element(
          'td',
          { class: classOf(cell, i), 'data-head': columns[i]?.head, ...record(cell.isRecord) },
          text(cell.text, MOST.cell),
        ),
      ),
    ),
  );
  return together(
    element(
      'div',
      { class: 'scroll' },
      element(
        'table',
        { class: widthOf(columns.length), 'aria-label': caption },
        element('thead', {}, element('tr', {}, ...heads)),
        element('tbody', {}, ...body),
      ),
    ),
    ...(below === undefined ? [] : [element('p', { class: 'below' }, text(below, MOST.paragraph))]),
  );
}

/** Tables of more columns than a phone has room for are stacked there; those of many more are set closer. */
function widthOf(columns: number): string | undefined {
  if (columns > 7) return 'wide dense';
  return columns > 3 ? 'wide' : undefined;
}
