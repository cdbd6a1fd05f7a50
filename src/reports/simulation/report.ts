import { fixed, plain } from '../../quantity/amount.ts';
import { significant } from '../../quantity/format.ts';
import type {
  SimulatedEstimate,
  SimulatedInterval,
  SimulatedPoint,
  SimulationResult,
} from '../../result/simulation.ts';
import { characteristicFigure, evenChance, type VerdictChances } from '../charts/characteristic.ts';
import {
  type Block,
  type Cell,
  figure,
  heading,
  list,
  paragraph,
  type ReportDocument,
  records,
  type Term,
} from '../document/blocks.ts';
import { named, versioned } from '../text/page.ts';
import { share, stated } from '../words/amounts.ts';
import type { Language } from '../words/language.ts';
import { shareText, withError } from './numbers.ts';

/** A simulation as a report: what was assumed, the operating characteristic, error, coverage and effort. */
export function simulationReport(
  result: SimulationResult,
  language: Language,
  version: string,
): ReportDocument {
  const { words } = language;
  const { protocol, points, notes, inputs } = result;
  const name = versioned(protocol.id, protocol.version);
  const [only, ...others] = points;
  return {
    language,
    kind: 'full',
    title: words.simulation.title,
    name,
    subtitle: [name, result.specification && nameOf(result.specification)].filter(Boolean).join(' · '),
    blocks: [
      paragraph(finding(result, name, language), 'lead'),
      ...evenSentence(result, language),
      ...figure(characteristicFigure(chances(points), medianLimit(result), 'characteristic', language)),
      ...(others.length > 0
        ? overMedians(points, language)
        : only === undefined
          ? []
          : [...verdictsAt(only, language), ...atOne(only, language)]),
      heading(words.simulation.assumed),
      { kind: 'terms', rows: assumed(result, language, version) },
      ...(notes.length === 0 ? [] : [heading(words.headings.notes), ...records(notes, language)]),
      heading(words.headings.cautions),
      ...list([words.simulation.monteCarlo, words.simulation.invented]),
      heading(words.headings.records),
      {
        kind: 'table',
        caption: words.headings.records,
        columns: [{ head: words.items.role }, { head: words.items.file }, { head: 'SHA-256' }],
        rows: inputs.map(({ role, path, sha256 }) => [
          { text: words.role(role), isWhole: true },
          { text: path },
          { text: sha256, isHash: true },
        ]),
      },
    ],
    end: words.texts.end(name),
  };
}

function nameOf({ id, version }: NonNullable<SimulationResult['specification']>): string {
  return versioned(id, version);
}

function medianLimit({ specification }: SimulationResult): number | null {
  return specification?.medianLimit ?? null;
}

function finding({ tests, points }: SimulationResult, protocol: string, language: Language): string {
  const [only] = points;
  return language.words.simulation.finding({
    tests: String(tests),
    protocol,
    points: points.length,
    median: points.length === 1 && only !== undefined ? joule(only.median, language) : null,
  });
}

/** Where a pass is as likely as not, in a sentence: the answer that a plan is made for. */
function evenSentence({ specification, points }: SimulationResult, language: Language): Block[] {
  if (specification === null) return [];
  const even = evenChance(chances(points));
  const { even: say, judgedBy } = language.words.simulation;
  const name = nameOf(specification);
  return [
    paragraph(even === null ? judgedBy(name) : say({ median: joule(even, language), specification: name })),
  ];
}

function chances(points: readonly SimulatedPoint[]): VerdictChances[] {
  return points.flatMap(({ median, verdicts }) => {
    if (verdicts === null) return [];
    const of = (verdict: 'pass' | 'fail' | 'inconclusive') => verdicts.overall[verdict]?.value ?? 0;
    return [{ truth: median, pass: of('pass'), fail: of('fail'), inconclusive: of('inconclusive') }];
  });
}

function assumed(result: SimulationResult, language: Language, version: string): Term[] {
  const { words, number } = language;
  const { law, spread, spreadUnit, between, damage, anyOffset } = result.assumed;
  const { mass, gravity } = result.energy;
  const of =
    spreadUnit === 'J'
      ? stated(language, spread, 'J')
      : `${share(language, spread)} (${words.simulation.ofLogarithm})`;
  const energy = words.fallingMass(
    mass === null ? null : number(plain(mass)),
    number(plain(Number(gravity.toFixed(5)))),
  );
  const term = (name: string, text: string) => ({ term: name, text });
  return [
    term(words.simulation.law, words.law(law)),
    term(words.simulation.spread, of),
    ...(between > 0 ? [term(words.simulation.between, share(language, between))] : []),
    ...(damage > 0 ? [term(words.simulation.damage, share(language, damage))] : []),
    ...(anyOffset ? [term(words.simulation.offset, '±')] : []),
    term(words.simulation.energy, energy),
    term(words.simulation.fitted, words.law(result.protocol.distribution)),
    term(words.simulation.tests, String(result.tests)),
    term(words.simulation.seed, String(result.seed)),
    term(words.items.tool, `tirelab ${version}`),
  ];
}

/** Chance of each verdict at one true median, criterion by criterion. */
function verdictsAt({ verdicts: found }: SimulatedPoint, language: Language): Block[] {
  if (found === null) return [];
  const { charts, criteria: words, verdict } = language.words;
  const shown = ['pass', 'fail', 'inconclusive'] as const;
  const row = (name: string, of: typeof found.overall) => [
    { text: name },
    ...shown.map((word): Cell => {
      const chance = of[word];
      return { text: chance === undefined ? '0 %' : language.number(`${shareText(chance)} %`) };
    }),
  ];
  return [
    heading(charts.chanceOfVerdict),
    {
      kind: 'table',
      caption: charts.chanceOfVerdict,
      columns: [
        { head: words.criterion },
        ...shown.map((word) => ({ head: verdict[word], align: 'right' as const })),
      ],
      rows: [
        ...found.criteria.map(({ id, verdicts }) => row(named(id), verdicts)),
        row(words.together, found.overall),
      ],
    },
  ];
}

/** A row for each true median. */
function overMedians(points: readonly SimulatedPoint[], language: Language): Block[] {
  const { simulation: words, verdict: verdicts } = language.words;
  const judged = points.some((point) => point.verdicts !== null);
  const shown = ['pass', 'fail', 'inconclusive'] as const;
  const right = (head: string) => ({ head, align: 'right' as const });
  const said = (text: string): Cell => ({ text: language.number(text) });
  return [
    heading(words.table),
    {
      kind: 'table',
      caption: words.table,
      columns: [
        right(words.median),
        ...(judged ? shown.map((word) => right(verdicts[word])) : []),
        right(`${words.bias} (J)`),
        right(`${words.deviation} (J)`),
        right(words.holds),
        right(words.drops),
        right(words.tyres),
      ],
      rows: points.map((point) => {
        const first = point.estimates[0]!;
        const two = first.intervals.find(({ sides }) => sides === 2);
        return [
          { text: joule(point.median, language) },
          ...(judged ? shown.map((word) => said(inPercent(point.verdicts?.overall[word]?.value ?? 0))) : []),
          said(first.bias === null ? '—' : fixed(first.bias.value, 2)),
          said(first.standardDeviation === null ? '—' : fixed(first.standardDeviation.value, 2)),
          said(two === undefined ? '—' : inPercent(two.coverage.value)),
          said(fixed(point.drops.mean.value, 1)),
          said(fixed(point.specimens.mean.value, 1)),
        ];
      }),
    },
  ];
}

/** Errors of the estimates and coverage of their intervals, at one true median. */
function atOne({ estimates }: SimulatedPoint, language: Language): Block[] {
  const { simulation: words } = language.words;
  const said = (text: string): Cell => ({ text: language.number(text) });
  const withNone = (text: string) => said(text === 'none' ? '—' : text);
  const intervals = estimates.flatMap((estimate) =>
    estimate.intervals.map((interval) => [
      { text: estimateName(estimate, language) },
      { text: promise(interval, language) },
      said(`${shareText(interval.coverage)} %`),
    ]),
  );
  return [
    heading(words.errors),
    {
      kind: 'table',
      caption: words.errors,
      columns: [
        { head: words.estimate },
        { head: words.truth, align: 'right' },
        { head: words.bias, align: 'right' },
        { head: words.deviation, align: 'right' },
      ],
      rows: estimates.map((estimate) => [
        { text: estimateName(estimate, language) },
        {
          text:
            estimate.truth === null
              ? '—'
              : stated(language, Number(significant(estimate.truth, 4)), estimate.unit),
        },
        withNone(withError(estimate.bias)),
        withNone(withError(estimate.standardDeviation)),
      ]),
    },
    ...(intervals.length === 0
      ? []
      : [
          heading(words.intervals),
          {
            kind: 'table',
            caption: words.intervals,
            columns: [
              { head: words.estimate },
              { head: words.promised },
              { head: words.held, align: 'right' },
            ],
            rows: intervals,
          } as const,
        ]),
  ];
}

function estimateName(
  { quantity, probability, method, unit }: SimulatedEstimate,
  language: Language,
): string {
  const { words } = language;
  const of = { quantity, probability, unit };
  return `${words.quantity(of, probability === undefined ? '' : share(language, probability))}, ${words.method(method)}`;
}

function promise({ level, sides, method }: SimulatedInterval, language: Language): string {
  const { words } = language;
  return `${share(language, level)} ${words.simulation.sides(sides)}, ${words.method(method)}`;
}

function joule(value: number, language: Language): string {
  return stated(language, Number(significant(value, 4)), 'J');
}

function inPercent(fraction: number): string {
  return `${fixed(100 * fraction, 1)} %`;
}
