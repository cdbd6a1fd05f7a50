import { svgOf } from '../charts/figure.ts';
import type { Block, ReportDocument } from '../document/blocks.ts';
import { atLineStart, inline } from './escape.ts';

/** How long a text may be where it stands; more of it is cut with an ellipsis. */
const MOST = { title: 160, heading: 120, paragraph: 1500, item: 600, cell: 320 } as const;

/** Where the pictures of a report in Markdown are: within the file, or told in words only. */
export type MarkdownPictures = 'inline' | 'words';

interface Context {
  readonly missing: string;
  readonly pictures: MarkdownPictures;
  /** What the pictures are, in the order of their numbers: `data:` addresses. */
  readonly sources: string[];
}

/**
 * A report as Markdown with tables: the same words as the HTML. Pictures are within the file, each named where it stands
 * and defined before the end mark, so that the text stays readable as it is; whoever does not show them, or is asked for
 * words, has what they show in words.
 */
export function markdown(
  { language, title, subtitle, blocks, end }: ReportDocument,
  pictures: MarkdownPictures = 'inline',
): string {
  const context: Context = { missing: language.words.items.missing, pictures, sources: [] };
  const body = blocks.flatMap((block) => written(block, context));
  const parts = [
    `# ${inline(title, MOST.title)}`,
    atLineStart(subtitle, 300),
    ...body,
    context.sources.map((source, i) => `[${nameOf(i)}]: ${source}`).join('\n'),
    '---',
    atLineStart(end, MOST.heading),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function nameOf(place: number): string {
  return `picture-${place + 1}`;
}

/** The picture where it stands; nothing where words are asked for. */
function shown(alternative: string, source: string, { pictures, sources }: Context): string[] {
  if (pictures === 'words') return [];
  sources.push(source);
  return [`![${inline(alternative, MOST.heading)}][${nameOf(sources.length - 1)}]`];
}

function written(block: Block, context: Context): string[] {
  const { missing } = context;
  switch (block.kind) {
    case 'heading':
      return [`${'#'.repeat(block.level)} ${inline(block.text, MOST.heading)}`];
    case 'paragraph': {
      const text = atLineStart(block.text, MOST.paragraph);
      return [block.tone === 'lead' ? `**${text}**` : text];
    }
    case 'verdict':
      return [`> **${inline(block.text, MOST.paragraph)}**`];
    case 'list':
      return [block.items.map((item) => `- ${atLineStart(item.text, MOST.item)}`).join('\n')];
    case 'table':
      return [
        tableOf(block),
        ...(block.below === undefined ? [] : [atLineStart(block.below, MOST.paragraph)]),
      ];
    case 'terms':
      return [
        block.rows
          .map(({ term, text }) => {
            const content = text === null ? `*${inline(missing, MOST.cell)}*` : inline(text, MOST.paragraph);
            return `- **${inline(term, MOST.heading)}:** ${content}`;
          })
          .join('\n'),
      ];
    case 'figure': {
      const { title, alternative } = block.figure;
      const svg = Buffer.from(svgOf(block.figure)).toString('base64');
      return [
        ...shown(title, `data:image/svg+xml;base64,${svg}`, context),
        `**${inline(title, MOST.heading)}.** ${inline(alternative, 1000)}`,
      ];
    }
    case 'photos':
      return block.photos.flatMap(({ path, caption, type, base64 }) => [
        ...shown(caption, `data:${type};base64,${base64}`, context),
        `- ${atLineStart(caption, MOST.item)} (${inline(path, MOST.cell)})`,
      ]);
    case 'columns':
      return block.columns.flat().flatMap((inner) => written(inner, context));
  }
}

function tableOf({ columns, rows }: Extract<Block, { kind: 'table' }>): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(({ head }) => inline(head, MOST.heading))),
    line(columns.map(({ align }) => (align === 'right' ? '---:' : '---'))),
    ...rows.map((row) =>
      line(
        row.map(({ text, verdict }) => {
          const cell = inline(text, MOST.cell);
          return verdict === undefined || cell === '' ? cell : `**${cell}**`;
        }),
      ),
    ),
  ].join('\n');
}
