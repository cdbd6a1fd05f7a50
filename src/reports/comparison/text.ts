import type { ComparedFactor, ComparisonResult } from '../../result/comparison.ts';
import { named, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';
import { sectionsOf } from './sections.ts';
import { headlineSentence, modelName, standingSentence, withInterval } from './words.ts';

/** The comparison for people: the headline or the refusal, what is not shown to be equal, then the numbers. */
export function comparisonText(result: ComparisonResult, options: TextOptions): string {
  const page = pageOf(options);
  const { samples, factors, refused, pairs, notes, groups, influence } = result;
  const list = (lines: readonly string[]) => lines.flatMap((line) => paragraph(page, line, 2, 4));
  const of = (state: ComparedFactor['state']) => factors.filter((factor) => factor.state === state);
  const values = ({ name, values: all }: ComparedFactor) =>
    `${named(name)}: ${all.map((value) => (value === null ? 'not recorded' : named(value))).join(' against ')}`;
  const names = samples.map(({ label }) => named(label));
  const unknown = of('unknown').map(({ name }) => named(name));
  const head =
    refused.length > 0
      ? ['Comparison refused.', ...refused.map(sentence)]
      : pairs.map(
          (pair) => `${sentence(headlineSentence(result, pair))} ${standingSentence(pair, samples.length)}`,
        );
  const rows = pairs.flatMap(({ first, second, differences }) => [
    [`${names[second]} / ${names[first]}`, '', ''],
    ...differences.map((one) => [modelName(one), withInterval(one.ratio), withInterval(one.difference)]),
  ]);
  const columns = [
    { head: '', align: 'left', least: 22 },
    { head: 'ratio', align: 'right', least: 12 },
    { head: `difference ${result.unit}`, align: 'right', least: 12 },
  ] as const;
  const missing = pairs.flatMap(({ differences }) => differences.flatMap(({ ratio }) => ratio.why ?? []));
  const sets = groups.map((group) => group.map((i) => names[i]).join(', '));
  const [opening, ...rest] = head;
  const lines = [
    ...paragraph(page, opening!, 0),
    ...list(rest),
    ...section(
      page,
      'Not shown to be equal (recorded for one or none)',
      unknown.length === 0 ? [] : paragraph(page, unknown.join(', ')),
    ),
    ...section(
      page,
      'Put aside by the reader',
      list(
        of('differs')
          .filter(({ despite }) => despite !== null)
          .map((factor) => `${values(factor)}; despite: ${named(factor.despite!)}`),
      ),
    ),
    ...section(page, 'Declared', list(of('declared').map(values))),
    ...section(page, 'Consequences, as listed', list(of('consequence').map(values))),
    ...section(
      page,
      result.kind === 'impact'
        ? 'Energies, second over first, with intervals'
        : 'Lives, second over first, with intervals',
      rows.length === 0 ? [] : [...table(page, columns, rows), ...list([...new Set(missing)].map(sentence))],
    ),
    ...section(page, 'Not told apart, weakest first', samples.length > 2 ? list(sets) : []),
    ...section(
      page,
      'Without one tyre',
      list(
        influence.map(({ sample, specimen, effect }) => `${named(specimen)} (${names[sample]}): ${effect}`),
      ),
    ),
    ...sectionsOf(result).flatMap(({ heading, lines: told }) =>
      section(page, heading, list(told.map(sentence))),
    ),
    ...section(page, 'Notes', list(notes.map(sentence))),
    ...section(
      page,
      'Equal',
      list(
        of('equal').length === 0
          ? []
          : [
              of('equal')
                .map(({ name }) => named(name))
                .join(', '),
            ],
      ),
    ),
  ];
  return `${lines.join('\n')}\n`;
}
