import { compareAdjusted } from '../comparison/adjusted.ts';
import { aliasingOf } from '../comparison/aliasing.ts';
import { compareSamples, mediansOf, type PairSettings } from '../comparison/compare-samples.ts';
import { poolSides } from '../comparison/pooled.ts';
import { factorRefusals, methodsTogether } from '../comparison/refusals.ts';
import { ratiosOfRatios, referenceOf, relativeTo } from '../comparison/relative.ts';
import type { Side } from '../comparison/side.ts';
import { factorStates } from '../comparison/states.ts';
import { tradeOffs } from '../comparison/trade-off.ts';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { ComparedFactor, ComparisonResult } from '../result/comparison.ts';
import { rigNotes } from './compare-uncertainty.ts';
import { isImpactSide, labelled, type ReadRuns, readRuns } from './comparing/read-runs.ts';
import { verdictInfluence } from './comparing/verdict-influence.ts';

/** How runs are to be compared. */
export interface CompareOptions {
  /** Reasons for which differences are put aside, by the factor's name. */
  readonly despite: ReadonlyMap<string, string>;
  /** Construction (`id` or `id@revision`) that all stand against; null for the first sample. */
  readonly reference?: string | null;
  /** Share that may be lost against the reference; null where nothing is judged. */
  readonly margin?: number | null;
  /** Conditions to allow for, and blocks. */
  readonly covariates?: readonly string[];
  /** Puts runs of one construction together. */
  readonly pool?: boolean;
  readonly runner?: PairSettings['runner'];
  readonly onProgress?: (done: number, all: number) => void;
}

/**
 * Runs against each other: only where nothing but the declared factors differs. A run that cannot be read is told and
 * passed over, as long as two samples are left.
 *
 * @throws InputError with the problems of all runs where fewer than two samples are left; nothing is compared then
 */
export async function compare(paths: readonly string[], options: CompareOptions): Promise<ComparisonResult> {
  const { despite, reference = null, margin = null, covariates = [], onProgress } = options;
  const runs = await readRuns(paths, onProgress);
  const { kind, law, confidence } = runs;
  const pooled = options.pool === true ? poolSides(runs.sides, despite, law) : NOT_POOLED(runs.sides);
  const sides = labelled(referenceFirst(pooled.sides, reference));
  if (sides.length < 2) throw new InputError(tooFew(runs, sides));
  const matched = matchedReferences(sides, reference);
  const methods = methodsTogether(runs.protocols);
  const aside = asideBy(crossesDays(sides, matched), covariates, methods.bySingleHits !== null);
  const factors = factorsOf(sides, matched, despite, aside);
  throwIfIdle(despite, factors);
  const refused = [
    ...runs.mixed,
    ...methods.refused,
    ...pooled.refused,
    ...sides.flatMap(({ refused: why, sample }) => (why === null ? [] : [`${sample.label}: ${why}`])),
    ...factorRefusals(factors),
    ...referenceRefusals(sides, matched, despite),
    ...(methods.bySingleHits === null ? [] : singleHitRefusals(sides, methods.bySingleHits)),
  ];
  const head = {
    kind,
    unit: kind === 'impact' ? 'J' : 'km',
    inputs: runs.inputs,
    distribution: law,
    confidence,
    samples: sides.map(({ sample }) => sample),
    factors,
    refused,
    notes: [
      ...notesOf(factors, sides, runs),
      ...pooled.notes,
      ...(methods.bySingleHits === null
        ? []
        : [
            `compared by single hits on fresh tyres alone: ${methods.bySingleHits}`,
            ...sides.flatMap(untoldNote),
          ]),
      ...rigNotes(
        sides
          .filter(isImpactSide)
          .map((side) => ({ ...side, label: side.sample.label, sample: side.evidence })),
      ),
    ],
    unread: runs.unread,
    aliasing: aliasingOf(sides),
  } as const;
  if (refused.length > 0) return { ...head, ...NOTHING };
  const settings: PairSettings = {
    kind,
    law,
    confidence,
    margin,
    bySingleHits: methods.bySingleHits !== null,
    ...(options.runner ? { runner: options.runner } : {}),
  };
  const comparable = crossesDays(sides, matched) ? [] : sides;
  const compared = await compareSamples(comparable, settings);
  const relative = relativeTo(sides, matched, law, confidence, margin);
  return {
    ...head,
    ...compared,
    adjusted: covariates.length === 0 ? null : compareAdjusted(sides, covariates, law, confidence),
    relative,
    ratiosOfRatios: ratiosOfRatios(relative),
    tradeOff: tradeOffs(head.samples, mediansOf(sides.length, compared.pairs), compared.pairs),
    verdictInfluence: sides.flatMap((side, place) =>
      isImpactSide(side) ? verdictInfluence(side, place) : [],
    ),
  };
}

const NOTHING = {
  pairs: [],
  ranking: null,
  groups: [],
  influence: [],
  adjusted: null,
  relative: [],
  ratiosOfRatios: [],
  tradeOff: [],
  verdictInfluence: [],
} as const;

const NOT_POOLED = (sides: readonly Side[]) => ({ sides, refused: [], notes: [] });

function isOf({ sample: { construction } }: Side, name: string): boolean {
  return name === construction.id || name === `${construction.id}@${construction.revision}`;
}

function referenceFirst(sides: readonly Side[], reference: string | null): readonly Side[] {
  if (reference === null) return sides;
  const own = sides.filter((side) => isOf(side, reference));
  if (own.length > 0) return [...own, ...sides.filter((side) => !own.includes(side))];
  const known = [...new Set(sides.map(({ sample }) => sample.construction.id))].join(', ');
  const message = `found --reference ${quote(reference)}, expected one of the constructions compared: ${known}`;
  throw new InputError([{ file: '--reference', line: null, column: null, code: 'no-reference', message }]);
}

/** The reference of each side that has one of its own day: tyres of the reference role, or of the named construction. */
function matchedReferences(sides: readonly Side[], reference: string | null): ReadonlyMap<number, number> {
  const isReference = (side: Side) =>
    reference === null ? side.sample.role === 'reference' : isOf(side, reference);
  const references = sides.flatMap((side, place) => (isReference(side) ? [place] : []));
  if (references.length === 0) return new Map();
  return new Map(
    sides.flatMap((side, place) => {
      if (isReference(side)) return [];
      const own = referenceOf(place, sides, references);
      return own === null ? [] : [[place, own] as const];
    }),
  );
}

/** Whether sides stand to references of several days, so that only their ratios can be compared. */
function crossesDays(sides: readonly Side[], matched: ReadonlyMap<number, number>): boolean {
  const references = new Set(matched.values());
  return references.size > 1 && matched.size + references.size === sides.length;
}

/** What a ratio to the reference of the same day does away with, and what single hits on fresh tyres do. */
const OF_THE_DAY: ReadonlySet<string> = new Set(['day', 'rig', 'operator', 'mean temperature']);
const OF_THE_RISE: ReadonlySet<string> = new Set(['start', 'step']);

/** Why a difference is put aside by the way of comparing itself; null where it is not. */
type AsideBy = (factor: ComparedFactor) => string | null;

function asideBy(crosses: boolean, covariates: readonly string[], bySingleHits: boolean): AsideBy {
  return ({ name, note }) => {
    if (crosses && OF_THE_DAY.has(name))
      return 'each side is told as a ratio to the reference of its own day';
    if (bySingleHits && OF_THE_RISE.has(name)) return 'single hits on fresh tyres are compared';
    return covariates.includes(name) && note === 'shared in part only' ? 'allowed for as a covariate' : null;
  };
}

function factorsOf(
  sides: readonly Side[],
  matched: ReadonlyMap<number, number>,
  despite: ReadonlyMap<string, string>,
  aside: AsideBy,
): ComparedFactor[] {
  // References of several days are one construction: they need not be like the candidates, only like each other.
  const crosses = crossesDays(sides, matched);
  const places = sides.map((_, i) => i).filter((place) => !crosses || matched.has(place));
  const looked = places.map((place) => sides[place]!);
  const found = factorStates(
    looked.map(({ facts }) => facts),
    looked,
    despite,
  );
  return found.map((factor) => {
    const isOpen = factor.state === 'differs' && factor.despite === null;
    return spread(isOpen ? { ...factor, despite: aside(factor) } : factor, places, sides.length);
  });
}

/** Values at the places of all samples, where some were not looked at. */
function spread(factor: ComparedFactor, places: readonly number[], size: number): ComparedFactor {
  if (places.length === size) return factor;
  const values = new Array<string | null>(size).fill(null);
  for (const [i, place] of places.entries()) values[place] = factor.values[i]!;
  return { ...factor, values };
}

/** Conditions in which a side differs from the reference of its own day. */
function referenceRefusals(
  sides: readonly Side[],
  matched: ReadonlyMap<number, number>,
  despite: ReadonlyMap<string, string>,
): string[] {
  if (!crossesDays(sides, matched)) return [];
  return [...matched].flatMap(([place, reference]) => {
    const pair = [sides[reference]!, sides[place]!];
    const conditions = pair.map(({ facts }) => facts.filter(({ group }) => group !== 'construction'));
    return factorRefusals(factorStates(conditions, [], despite)).map(
      (why) => `${pair[1]!.sample.label} and its reference: ${why}`,
    );
  });
}

function singleHitRefusals(sides: readonly Side[], why: string): string[] {
  return sides.flatMap(({ single, sample }) =>
    typeof single === 'string'
      ? [
          `${why}: only a model with a specimen effect compares them, and for ${sample.label} there is none (${single})`,
        ]
      : [],
  );
}

function untoldNote({ single, sample }: Side): string[] {
  if (typeof single === 'string' || single.untold === null) return [];
  return [`${sample.label}: the limits cover what the drops do not tell: ${single.untold}`];
}

function tooFew({ unread }: ReadRuns, sides: readonly Side[]): Problem[] {
  if (unread.length > 0) return unread.flatMap(({ problems }) => problems);
  const message = `found ${sides.length} sample, expected two or more: name another run, or leave --pool out`;
  return [
    { file: sides[0]?.sample.path ?? '', line: null, column: null, code: 'nothing-to-compare', message },
  ];
}

function throwIfIdle(despite: ReadonlyMap<string, string>, factors: readonly ComparedFactor[]): void {
  const idle = [...despite.keys()].filter(
    (name) => !factors.some((factor) => factor.name === name && factor.despite),
  );
  if (idle.length > 0) throw new InputError(idle.map((name) => idleProblem(name, factors)));
}

function idleProblem(name: string, factors: readonly ComparedFactor[]): Problem {
  const differing = factors.filter(({ state }) => state === 'differs').map((factor) => factor.name);
  const expected = differing.length === 0 ? 'nothing differs' : `what differs is ${differing.join(', ')}`;
  const message = `found --despite ${quote(name)}, expected a factor that differs; ${expected}`;
  return { file: '--despite', line: null, column: null, code: 'idle-override', message };
}

function notesOf(
  factors: readonly ComparedFactor[],
  sides: readonly Side[],
  { laws, law }: ReadRuns,
): string[] {
  const declared = factors.filter(({ state }) => state === 'declared').map(({ name }) => name);
  const several =
    declared.length > 1
      ? [
          `${declared.length} declared factors differ at once (${declared.join(', ')}): the effect belongs to no single one`,
        ]
      : [];
  const assumed =
    laws.length > 1 ? [`the protocols assume different laws; ${law}, that of the first, is used`] : [];
  const repeated = sides
    .filter(({ sample, looks }) => looks.length > sample.specimens)
    .map(
      ({ sample }) =>
        `${sample.label}: the likelihood takes several drops on one tyre as if on tyres of their own; its intervals may be too narrow`,
    );
  return [...several, ...assumed, ...repeated];
}
