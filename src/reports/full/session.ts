import { upTo } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { list, paragraph } from '../document/blocks.ts';
import { named } from '../text/page.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

const MOST = { samples: 60, repeated: 60 } as const;

/** The samples of a session with several constructions or rigs, and how each stands. */
export function samples({ samples: all }: ImpactResult, language: Language): Section {
  const { session: words, simulation, items, criteria, verdict: word } = language.words;
  const shown = all.slice(0, MOST.samples);
  if (shown.length === 0) return { heading: words.samples, blocks: [] };
  return {
    heading: words.samples,
    blocks: [
      {
        kind: 'table',
        caption: words.samples,
        columns: [
          { head: words.sample },
          { head: words.role },
          { head: simulation.tyres, align: 'right' },
          { head: items.drops, align: 'right' },
          { head: words.failed, align: 'right' },
          { head: criteria.verdict },
        ],
        rows: shown.map(({ name, role, specimens, drops, failures, validDrops, verdict }) => [
          { text: named(name) },
          { text: words.roles[role] ?? role, isWhole: true },
          { text: String(specimens) },
          { text: String(drops) },
          { text: words.ofValid(failures, validDrops) },
          verdict === null ? { text: '—' } : { text: word[verdict], verdict },
        ]),
        below: all.length > shown.length ? items.more(all.length - shown.length) : undefined,
      },
      paragraph(words.apart),
    ],
  };
}

/** Which run this one repeats, and which tyres stood in for others. */
export function repeated({ replaces, retests = [] }: ImpactResult, language: Language): Section {
  const { session: words } = language.words;
  const sentences = [
    ...(replaces === null
      ? []
      : [
          words.repeatsRun({
            run: named(replaces.run),
            path: named(replaces.path),
            reason: named(replaces.reason),
            approver: named(replaces.approver),
          }),
        ]),
    ...retests.map(({ specimen, replaces: other, reason, approver }) =>
      words.inPlaceOf({
        specimen: named(specimen),
        replaces: named(other),
        reason: named(reason),
        approver: named(approver),
      }),
    ),
  ];
  return { heading: words.repeats, blocks: list(sentences.slice(0, MOST.repeated)) };
}

/** The falling masses that were not the stated ones. */
export function correctedMasses({ massCorrections = [] }: ImpactResult, language: Language): Section {
  const { session: words, between, drops } = language.words;
  const kilograms = (mass: number) => language.number(upTo(mass, 4));
  const sentences = massCorrections.slice(0, MOST.repeated).map(({ rig, stated, used, drops: count }) => {
    const { least, most } = used;
    return words.massCorrected({
      rig: rig === null ? null : named(rig),
      stated: `${kilograms(stated)} kg`,
      used: `${least === most ? kilograms(least) : between(kilograms(least), kilograms(most))} kg`,
      drops: drops(count),
    });
  });
  return { heading: words.masses, blocks: list(sentences) };
}
