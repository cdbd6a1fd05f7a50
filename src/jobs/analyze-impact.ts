import type { EstimatorName } from '../documents/kinds.ts';
import type { AppliedAmendment } from '../impact/amend.ts';
import { observe } from '../impact/observations.ts';
import { periodOf } from '../impact/period.ts';
import { regress } from '../impact/regression/regress.ts';
import type { Replay } from '../impact/replay/replay.ts';
import type { Finding } from '../logs/finding.ts';
import type {
  AmendmentEntry,
  ImpactResult,
  Input,
  SampleSummary,
  SpecimenRetest,
} from '../result/analysis.ts';
import type { Estimate, IntervalKind } from '../result/estimate.ts';
import { type EnergyScale, massUsed } from '../rig/energy.ts';
import { fallingMass } from '../rig/mass.ts';
import { massCorrections } from '../rig/mass-corrections.ts';
import { overallOf } from '../verdict/overall.ts';
import { type AnalyzedSample, analyzeSample, constructionOf, estimateSample } from './analyze-sample.ts';
import { energiesOfRigs, mainRig } from './energies-of-rigs.ts';
import type { ImpactTest } from './impact-test.ts';
import { CUT_SHORT, replayTest } from './replay-test.ts';
import { carriedUncertainty } from './rig-uncertainty.ts';

/**
 * Replay, estimates and verdict of a drop test whose files have been read. Several samples (constructions, rigs) are
 * estimated and judged one by one, that of the first construction of the run first; the worst verdict is the run's.
 *
 * @param asked estimators beside those of the method and the protocol.
 * @param intervals what the limits of the likelihood rest on.
 */
export function analyzeImpact(
  test: ImpactTest,
  asked: readonly EstimatorName[] = [],
  intervals: IntervalKind = 'calibrated',
): ImpactResult {
  const { protocol, rig, constructions, specification } = test;
  const { drops, scale, replayed, amended, rigOf, collapsed } = replayTest(test);
  const context = { test, replayed, scale, asked, intervals };
  const analyzed = replayed.samples.map((sample) => analyzeSample(context, sample));
  const verdicts = analyzed.flatMap(({ verdict }) => verdict ?? []);
  const [first] = analyzed;
  const carried = carriedUncertainty(test, scale, analyzed);
  return {
    kind: 'impact',
    run: test.run,
    protocol: { id: protocol.id, version: protocol.version, method: protocol.method, title: protocol.title },
    rig: mainRig(rigOf, drops, rig),
    constructions: constructions.map(({ id, revision }) => ({ id, revision })),
    specification: specification && { id: specification.id, version: specification.version },
    inputs: test.inputs.map((input) => withoutCollapsed(input, collapsed)),
    energy: {
      definition: scale.definition,
      gravity: scale.gravity.value,
      gravityFrom: scale.gravity.from,
      ...massUsed(scale, drops),
      ...energiesOfRigs(scale, drops, rigOf),
    },
    ...listed('massCorrections', massCorrections(drops, scale, rigOf)),
    ...listed('retests', retestsOf(test)),
    period: periodOf(drops),
    ...(carried.result === null ? {} : { uncertainty: carried.result }),
    ...(intervals === 'calibrated' ? {} : { intervals }),
    defaults: [...protocol.defaults, ...(specification?.defaults ?? [])],
    notes: [...notesOf(test, replayed), ...carried.notes],
    conformance: {
      status: replayed.conformance.status,
      why: replayed.conformance.why,
      deviations: replayed.deviations,
      excluded: replayed.counts.excluded,
    },
    sample: {
      specimens: replayed.counts.specimens,
      drops: replayed.counts.drops,
      validDrops: replayed.counts.validDrops,
      failures: replayed.counts.failures,
      censored: censoredOf(analyzed),
    },
    samples: analyzed.length > 1 ? analyzed.map(summaryOf) : [],
    amendments: amended.map(entryOf),
    replaces: test.replaces,
    provisional: replayed.provisional,
    path: replayed.drops.map(({ drop, use, sample }) => ({
      line: drop.line,
      specimen: drop.specimen,
      series: drop.series ?? replayed.samples[sample]?.name ?? null,
      height: drop.height,
      ...(protocol.vary === 'mass' ? { mass: drop.mass } : {}),
      energy: scale.of(drop),
      outcome: drop.outcome,
      used: use === 'used',
    })),
    estimates: [
      ...analyzed.flatMap(({ estimates }) => estimates),
      ...(amended.length > 0 ? beforeAmendments(test, asked, intervals) : []),
    ],
    goodness: first?.estimated.goodness ?? null,
    regression: regressionOf(test, replayed, scale),
    criteria: analyzed.flatMap(({ criteria }) => criteria),
    verdict: specification === null ? null : overallOf(verdicts),
  };
}

/** What the same test says on its log as it was written: both states are shown. */
function beforeAmendments(
  test: ImpactTest,
  asked: readonly EstimatorName[],
  intervals: IntervalKind,
): Estimate[] {
  const original = { ...test, amendments: null };
  const { scale, replayed } = replayTest(original);
  return replayed.samples.flatMap((sample) => {
    const { estimates } = estimateSample({ test: original, replayed, scale, asked, intervals }, sample);
    const label = sample.name === null ? {} : { sample: sample.name, construction: sample.key.construction };
    return estimates
      .filter(({ method, variant }) => method === 'censored-likelihood' && variant === undefined)
      .map((estimate) => ({ ...estimate, ...label, variant: 'before-amendments' }));
  });
}

/** The import of a log without the rows that an earlier log of the same rig has too. */
function withoutCollapsed(input: Input, collapsed: ReadonlyMap<string, number>): Input {
  const count = input.role === 'log' ? (collapsed.get(input.path) ?? 0) : 0;
  if (count === 0 || input.import === undefined) return input;
  const { rows } = input.import;
  const { read, kept } = rows;
  return {
    ...input,
    import: {
      ...input.import,
      rows: { read, kept: kept - count, collapsed: rows.collapsed + count },
    },
  };
}

/** A key of the document that is only there where it has something to list. */
function listed<Key extends string, Item>(
  key: Key,
  items: readonly Item[],
): { [K in Key]?: readonly Item[] } {
  return items.length === 0 ? {} : ({ [key]: items } as { [K in Key]?: readonly Item[] });
}

/** Specimens that were tested in place of others, in the order of the register. */
function retestsOf({ register }: ImpactTest): SpecimenRetest[] {
  return (register?.specimens ?? []).flatMap(({ specimen, replaces, file, line }) => {
    if (replaces == null) return [];
    const { reason, approver } = replaces;
    return [{ specimen, replaces: replaces.specimen, reason, approver, file, line }];
  });
}

function censoredOf(analyzed: readonly AnalyzedSample[]): number | null {
  const each = analyzed.flatMap(({ estimated }) => estimated.observations.censored ?? []);
  return each.length === 0 ? null : each.reduce((sum, count) => sum + count, 0);
}

function summaryOf({ sample, estimated, verdict }: AnalyzedSample): SampleSummary {
  const { key, name, counts } = sample;
  return {
    name: name!,
    construction: key.construction,
    role: key.role,
    rig: key.rig,
    rim: key.rim,
    specimens: counts.specimens,
    drops: counts.drops,
    validDrops: counts.validDrops,
    failures: counts.failures,
    censored: estimated.observations.censored,
    verdict,
    ...(estimated.goodness === null ? {} : { goodness: estimated.goodness }),
    ...(estimated.regression === null ? {} : { regression: estimated.regression }),
  };
}

function entryOf({ amendment, drop }: AppliedAmendment): AmendmentEntry {
  const { file, line, what, old, reason, by, on } = amendment;
  const { file: log, line: logLine, number, specimen } = drop;
  return { file, line, log, logLine, drop: number, specimen, what, old, new: amendment.new, reason, by, on };
}

function notesOf(test: ImpactTest, { notes }: Replay): string[] {
  const seen = test.logs.flatMap(({ path, findings }) =>
    findings.filter(({ code }) => !CUT_SHORT.has(code)).map((finding) => findingSentence(path, finding)),
  );
  const beside = [test.register, test.mountings, test.checks, test.amendments].flatMap(
    (table) => table?.findings.map((finding) => findingSentence(table.path, finding)) ?? [],
  );
  return [...notes, ...seen, ...beside];
}

/** What was noticed while a file was read, with the file's name: not kept back from the reader of the result. */
function findingSentence(path: string, { message, line, column }: Finding): string {
  return `${[path, line, column].filter((part) => part !== null).join(':')}: ${message}`;
}

/** Effects on the strength over all samples of the test, so that constructions are compared on one likelihood. */
function regressionOf(test: ImpactTest, replayed: Replay, scale: EnergyScale): ImpactResult['regression'] {
  const { protocol } = test;
  if (protocol.regression === null) return null;
  const { why } = replayed.conformance;
  if (why !== null) return { unit: 'J', effects: [], tests: [], why, notes: [] };
  // The mass of a drop may be its rig's, and a covariate like any column.
  const drops = replayed.drops.map((visit) => {
    const { drop } = visit;
    return { ...visit, drop: { ...drop, mass: fallingMass(drop, scale.statedMassOf(drop)) } };
  });
  const { observations } = observe({ drops, method: protocol.method }, scale.of);
  return regress(protocol, protocol.regression, observations, constructionOf(test)).result;
}
