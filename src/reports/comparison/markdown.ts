import { echo } from '../../problem/echo.ts';
import type { ComparisonResult } from '../../result/comparison.ts';
import { sentence } from '../text/page.ts';
import { sectionsOf } from './sections.ts';
import { headlineSentence, modelName, standingSentence, withInterval } from './words.ts';

/** The comparison for a merge page: headline or refusal, the energies, every factor that is not equal. */
export function comparisonMarkdown(result: ComparisonResult): string {
  const { samples, factors, refused, pairs, notes } = result;
  const name = (i: number) => escaped(samples[i]!.label);
  const head =
    refused.length > 0
      ? ['### Comparison refused', '', ...refused.map((why) => `- ${escaped(sentence(why))}`)]
      : [
          '### Comparison',
          '',
          ...pairs.map(
            (pair) =>
              `- ${escaped(sentence(headlineSentence(result, pair)))} ${standingSentence(pair, samples.length)}`,
          ),
        ];
  const energies = pairs.flatMap(({ first, second, differences }) =>
    differences.map(
      (one) =>
        `| ${name(second)} / ${name(first)} | ${modelName(one)} | ${withInterval(one.ratio)} | ${withInterval(one.difference)} |`,
    ),
  );
  const open = factors
    .filter(({ state }) => state !== 'equal')
    .map(({ name: factor, state, values, despite }) => {
      const cells = values.map((value) => (value === null ? 'not recorded' : escaped(value)));
      const said = despite === null ? state : `${state}, despite: ${escaped(despite)}`;
      return `| ${escaped(factor)} | ${said} | ${cells.join(' | ')} |`;
    });
  const numbers = [
    `| pair | point, model | ratio | difference in ${result.unit} |`,
    '|---|---|---|---|',
    ...energies,
  ];
  const factorHead = [
    `| factor | state | ${samples.map((_, i) => name(i)).join(' | ')} |`,
    `|---|---|${samples.map(() => '---|').join('')}`,
  ];
  return [
    ...head,
    '',
    ...(energies.length > 0 ? [...numbers, ''] : []),
    ...(open.length > 0 ? [...factorHead, ...open, ''] : []),
    ...sectionsOf(result).flatMap(({ heading, lines }) =>
      lines.length === 0
        ? []
        : [`#### ${heading}`, '', ...lines.map((line) => `- ${escaped(sentence(line))}`), ''],
    ),
    ...(notes.length > 0 ? [...notes.map((note) => `- ${escaped(sentence(note))}`), ''] : []),
  ].join('\n');
}

/** Foreign text: no markup, no link, no new cell. */
function escaped(text: string): string {
  return echo(text, 400)
    .replace(/[\\`*_[\]()#!|~]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
}
