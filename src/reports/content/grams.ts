import { fixed } from '../../quantity/amount.ts';
import type { Block } from '../document/blocks.ts';
import { rangeText, valueText } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { massesOf, type Subject } from './subject.ts';

/** What a tyre weighs beside what it withstands, and the one for a kilogram of the other; nothing where none was weighed. */
export function gramsBesideJoules(subjects: readonly Subject[], language: Language): Block[] {
  const { words } = language;
  const rows = subjects.flatMap((subject) => {
    const masses = massesOf(subject);
    if (masses === null) return [];
    const { first } = subject;
    const value = first === null ? null : valueText(language, first, 1);
    const range = first === null ? null : rangeText(language, first, 1);
    const grams = `${fixed(masses.median, 0)} g (${words.between(fixed(masses.least, 0), fixed(masses.most, 0))} g, ${words.tyres(masses.n)})`;
    const perKilogram =
      first === null || first.value === null ? '—' : `${fixed((1000 * first.value) / masses.median, 0)} J/kg`;
    return [
      [
        { text: subject.name ?? '—' },
        { text: grams },
        { text: value === null ? (range ?? '—') : `${value}${range === null ? '' : ` (${range})`}` },
        { text: perKilogram },
      ],
    ];
  });
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words.headings.grams,
      columns: [
        { head: words.items.construction },
        { head: words.items.grams },
        { head: words.items.joules },
        { head: words.items.perKilogram },
      ],
      rows,
    },
  ];
}
