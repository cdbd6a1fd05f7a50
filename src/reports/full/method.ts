import { plain } from '../../quantity/amount.ts';
import { upTo } from '../../quantity/format.ts';
import type { ReportedBase, ReportedTest } from '../../result/report.ts';
import type { Block, Term } from '../document/blocks.ts';
import { paragraph, records } from '../document/blocks.ts';
import { named, versioned } from '../text/page.ts';
import type { Language } from '../words/language.ts';
import type { Section } from './section.ts';

/** The constructions as their documents describe them. */
export function items({ constructions, photos }: ReportedBase, language: Language): Section {
  const { headings, items: words, texts } = language.words;
  const blocks = constructions.map((own): Block => {
    const factors = Object.entries(own.factors).map(([name, value]) => `${named(name)} = ${named(value)}`);
    const rows: Term[] = [
      {
        term: words.construction,
        text: versioned(own.id, own.revision) + (own.title === null ? '' : ` — ${own.title}`),
      },
      { term: words.category, text: own.category },
      { term: words.size, text: own.size },
      { term: words.parent, text: own.parent },
      { term: words.declared, text: own.declared.length === 0 ? null : own.declared.join(', ') },
      { term: words.factors, text: factors.length === 0 ? null : factors.join('; ') },
    ];
    return { kind: 'terms', rows };
  });
  return {
    heading: headings.items,
    blocks: [
      ...(blocks.length === 0
        ? [{ kind: 'terms', rows: [{ term: words.construction, text: null }] } as const]
        : blocks),
      paragraph(texts.sampling),
      ...(photos.length === 0 ? [] : [{ kind: 'photos', photos } as const]),
    ],
  };
}

/** How the test was done, by its protocol. */
export function method({ method: own, result }: ReportedTest, language: Language): Section {
  const { words } = language;
  const { protocol, energy, sample, path, defaults, conformance } = result;
  const survived = path.filter(({ used, outcome }) => used && outcome === 'survived').length;
  const mass = energy.mass === null ? null : language.number(plain(energy.mass));
  const gravity = `${language.number(plain(Number(energy.gravity.toFixed(5))))}`;
  const term = (name: string, text: string | null) => ({ term: name, text });
  return {
    heading: words.headings.method,
    blocks: [
      {
        kind: 'terms',
        rows: [
          term(words.items.protocol, versioned(protocol.id, protocol.version)),
          term(words.items.procedure, words.method(protocol.method)),
          term(words.items.failure, own.failure),
          term(words.items.start, own.start && language.number(own.start)),
          term(words.items.step, own.step && language.number(own.step)),
          term(
            words.items.stop,
            own.stop?.replace(/[a-zA-Z]+(?=:)/g, (key) => words.items.stopKeys[key] ?? key) ?? null,
          ),
          term(words.items.law, words.law(own.distribution)),
          term(
            words.items.energy,
            `${words.energyDefinition[energy.definition] ?? energy.definition}; ${words.fallingMass(mass, gravity)}`,
          ),
          term(
            words.items.sample,
            words.sample({
              tyres: words.tyres(sample.specimens),
              drops: words.drops(sample.drops),
              valid: sample.validDrops,
              failed: sample.failures,
              survived,
              out: conformance.excluded,
            }),
          ),
        ],
      },
      ...(defaults.length === 0
        ? []
        : [paragraph(`${words.items.assumed}:`), ...records(defaults, language)]),
    ],
  };
}

/** Conditions as planned and as logged. */
export function conditions({ conditions: own }: ReportedTest, language: Language): Section {
  const { headings, items: words, between, drops } = language.words;
  const say = (value: number) => language.number(upTo(value, 3));
  return {
    heading: headings.conditions,
    blocks: [
      {
        kind: 'table',
        caption: headings.conditions,
        columns: [
          { head: words.condition },
          { head: words.planned },
          { head: words.logged },
          { head: words.mean, align: 'right' },
        ],
        rows: own.map(({ name, planned, unit, logged }) => [
          { text: words[name] },
          { text: planned === null ? words.notAsked : language.number(planned) },
          {
            text:
              logged === null
                ? words.notLogged
                : `${between(say(logged.least), say(logged.most))} ${unit} (${drops(logged.drops)})`,
          },
          { text: logged === null ? '—' : `${say(logged.mean)} ${unit}` },
        ]),
      },
    ],
  };
}
