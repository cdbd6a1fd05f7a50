import type { Block, ReportDocument } from '../document/blocks.ts';
import { atLineStart, inline } from './escape.ts';

/** How long a text may be where it stands; more of it is cut with an ellipsis. */
const MOST = { title: 160, heading: 120, paragraph: 1500, item: 600, cell: 320 } as const;

/**
 * A report as Markdown with tables: the same words as the HTML; pictures as what they show, in words, since Markdown
 * holds none without a file beside it.
 */
export function markdown({ language, title, subtitle, blocks, end }: ReportDocument): string {
  const missing = language.words.items.missing;
  const parts = [
    `# ${inline(title, MOST.title)}`,
    atLineStart(subtitle, 300),
    ...blocks.flatMap((block) => written(block, missing)),
    '---',
    atLineStart(end, MOST.heading),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function written(block: Block, missing: string): string[] {
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
      return [`**${inline(title, MOST.heading)}.** ${inline(alternative, 1000)}`];
    }
    case 'photos':
      return [
        block.photos
          .map(({ path, caption }) => `- ${atLineStart(caption, MOST.item)} (${inline(path, MOST.cell)})`)
          .join('\n'),
      ];
    case 'columns':
      return block.columns.flat().flatMap((inner) => written(inner, missing));
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
