import type { EstimatorName } from '../documents/kinds.ts';
import type { AppliedAmendment } from '../impact/amend.ts';
import { type Measure, observe } from '../impact/observations.ts';
import { periodOf } from '../impact/period.ts';
import { regress } from '../impact/regression/regress.ts';
import type { Replay } from '../impact/replay/replay.ts';
import type { Finding } from '../logs/finding.ts';
import type { AmendmentEntry, ImpactResult, SampleSummary } from '../result/analysis.ts';
import type { Estimate } from '../result/estimate.ts';
import { massUsed } from '../rig/energy.ts';
import { overallOf } from '../verdict/overall.ts';
import { type AnalyzedSample, analyzeSample, constructionOf, estimateSample } from './analyze-sample.ts';
import type { ImpactTest } from './impact-test.ts';
import { CUT_SHORT, replayTest } from './replay-test.ts';

/**
 * Replay, estimates and verdict of a drop test whose files have been read. Several samples (constructions, rigs) are
 * estimated and judged one by one, that of the first construction of the run first; the worst verdict is the run's.
 *
 * @param asked estimators beside those of the method and the protocol.
 */
export function analyzeImpact(test: ImpactTest, asked: readonly EstimatorName[] = []): ImpactResult {
  const { protocol, rig, constructions, specification } = test;
  const { drops, scale, replayed, amended } = replayTest(test);
  const context = { test, replayed, scale, asked };
  const analyzed = replayed.samples.map((sample) => analyzeSample(context, sample));
  const verdicts = analyzed.flatMap(({ verdict }) => verdict ?? []);
  const [first] = analyzed;
  return {
    kind: 'impact',
    run: test.run,
    protocol: { id: protocol.id, version: protocol.version, method: protocol.method, title: protocol.title },
    rig: rig && { id: rig.id, config: rig.config },
    constructions: constructions.map(({ id, revision }) => ({ id, revision })),
    specification: specification && { id: specification.id, version: specification.version },
    inputs: test.inputs,
    energy: {
      definition: scale.definition,
      gravity: scale.gravity.value,
      gravityFrom: scale.gravity.from,
      ...massUsed(scale, drops),
    },
    period: periodOf(drops),
    defaults: [...protocol.defaults, ...(specification?.defaults ?? [])],
    notes: notesOf(test, replayed),
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
      ...(amended.length > 0 ? beforeAmendments(test, asked) : []),
    ],
    goodness: first?.estimated.goodness ?? null,
    regression: regressionOf(test, replayed, scale.of),
    criteria: analyzed.flatMap(({ criteria }) => criteria),
    verdict: specification === null ? null : overallOf(verdicts),
  };
}

/** What the same test says on its log as it was written: both states are shown. */
function beforeAmendments(test: ImpactTest, asked: readonly EstimatorName[]): Estimate[] {
  const original = { ...test, amendments: null };
  const { scale, replayed } = replayTest(original);
  return replayed.samples.flatMap((sample) => {
    const { estimates } = estimateSample({ test: original, replayed, scale, asked }, sample);
    const label = sample.name === null ? {} : { sample: sample.name, construction: sample.key.construction };
    return estimates
      .filter(({ method, variant }) => method === 'censored-likelihood' && variant === undefined)
      .map((estimate) => ({ ...estimate, ...label, variant: 'before-amendments' }));
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
function regressionOf(test: ImpactTest, replayed: Replay, energyOf: Measure): ImpactResult['regression'] {
  const { protocol } = test;
  if (protocol.regression === null) return null;
  const { why } = replayed.conformance;
  if (why !== null) return { unit: 'J', effects: [], tests: [], why, notes: [] };
  const { observations } = observe({ drops: replayed.drops, method: protocol.method }, energyOf);
  return regress(protocol, protocol.regression, observations, constructionOf(test)).result;
}
