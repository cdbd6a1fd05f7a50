import { compareSamples, type Look } from '../comparison/compare-samples.ts';
import { conditionFacts, constructionFacts, type Fact } from '../comparison/facts.ts';
import { factorRefusals, methodRefusals } from '../comparison/refusals.ts';
import { factorStates } from '../comparison/states.ts';
import { tyreFacts } from '../comparison/tyre-facts.ts';
import type { Construction } from '../documents/kinds.ts';
import { observe } from '../impact/observations.ts';
import { plannedPressure } from '../impact/replay/conditions.ts';
import { mountingsOf } from '../impact/replay/mounting.ts';
import type { Replay, Sample } from '../impact/replay/replay.ts';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { ComparedFactor, ComparedSample, ComparisonResult } from '../result/comparison.ts';
import { type EnergyScale, massUsed } from '../rig/energy.ts';
import { laws } from '../statistics/laws/laws.ts';
import { rigNotes } from './compare-uncertainty.ts';
import { documentsOf } from './documents-of.ts';
import { type ImpactTest, readImpactTest } from './impact-test.ts';
import { replayTest } from './replay-test.ts';

/** A run made ready: one construction, its looks, and what is recorded of it. */
interface Prepared {
  readonly test: ImpactTest;
  readonly construction: Construction;
  readonly sample: ComparedSample;
  readonly looks: readonly Look[];
  readonly facts: readonly Fact[];
  readonly refused: string | null;
  /** How its energies were made. */
  readonly scale: EnergyScale;
  readonly evidence: Sample;
}

/**
 * Drop tests against each other, each of one construction: only where nothing but the declared factors differs.
 *
 * @param despite reasons for which differences are put aside, by the factor's name
 * @throws InputError with the problems of all runs; nothing is compared then
 */
export async function compare(
  paths: readonly string[],
  despite: ReadonlyMap<string, string>,
): Promise<ComparisonResult> {
  const prepared = await prepareAll(paths);
  const protocols = prepared.map(({ test }) => test.protocol);
  const constructions = prepared.map(({ construction }) => construction);
  const factors = factorStates(
    prepared.map(({ facts }) => facts),
    constructions,
    despite,
  );
  const idle = [...despite.keys()].filter(
    (name) => !factors.some((factor) => factor.name === name && factor.despite),
  );
  if (idle.length > 0) throw new InputError(idle.map((name) => idleProblem(name, factors)));
  const refused = [
    ...methodRefusals(protocols),
    ...prepared.flatMap(({ refused: why, sample }) => (why === null ? [] : [`${sample.label}: ${why}`])),
    ...factorRefusals(factors),
  ];
  const { distribution, confidence } = protocols[0]!;
  const head = {
    inputs: prepared.flatMap(({ test }) => test.inputs),
    distribution,
    confidence,
    samples: prepared.map(({ sample }) => sample),
    factors,
    refused,
    notes: [...notesOf(factors, prepared), ...rigNotes(prepared.map(sideOf))],
  };
  if (refused.length > 0) return { ...head, pairs: [], ranking: null, groups: [], influence: [] };
  const looks = prepared.map((one) => one.looks);
  return { ...head, ...compareSamples(looks, laws[distribution], confidence) };
}

async function prepareAll(paths: readonly string[]): Promise<Prepared[]> {
  const problems: Problem[] = [];
  const read: ImpactTest[] = [];
  for (const path of paths) {
    try {
      const test = await readImpactTest(documentsOf({ kind: 'run', path }, NO_INPUT));
      problems.push(...shapeProblems(test, path));
      read.push(test);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  const names = read.map(({ constructions: [one] }) => `${one!.id}@${one!.revision}`);
  return read.map((test, i) => {
    const isAlone = names.filter((name) => name === names[i]).length === 1;
    return prepare(test, paths[i]!, isAlone ? names[i]! : `${names[i]} (${test.run ?? paths[i]})`);
  });
}

/** A run names its logs; nothing is read from standard input. */
const NO_INPUT: AsyncIterable<Uint8Array> = { async *[Symbol.asyncIterator]() {} };

function shapeProblems({ constructions, protocol }: ImpactTest, path: string): Problem[] {
  const at = { file: path, line: null, column: null, code: 'not-one-construction' };
  if (constructions.length !== 1) {
    const message = `found ${constructions.length} constructions, expected one: compare takes a run of each`;
    return [{ ...at, message }];
  }
  if (protocol.damagePerHit === null) return [];
  const message = 'found damagePerHit, expected none: what each hit takes from a tyre is not compared yet';
  return [{ ...at, code: 'damage-not-compared', message }];
}

function prepare(test: ImpactTest, path: string, label: string): Prepared {
  const { protocol, rig, register } = test;
  const construction = test.constructions[0]!;
  const { replayed, scale } = replayTest(test);
  const samples = replayed.samples.filter(({ key }) => key.role === 'candidate');
  const sample = samples[0]!;
  const { observations, specimens, drops } = observe(sample, scale.of);
  const used = sample.drops.filter(({ use }) => use === 'used');
  const hit = [...new Set(used.map(({ drop }) => drop.specimen))];
  const rows = new Map(register?.specimens.map((row) => [row.specimen, row]));
  const mountings = mountingsOf(test.mountings?.records ?? []);
  const { mass } = massUsed(
    scale,
    used.map(({ drop }) => drop),
  );
  const pressure = plannedPressure(protocol, construction);
  return {
    test,
    construction,
    sample: {
      label,
      run: test.run,
      path,
      construction: { id: construction.id, revision: construction.revision },
      specimens,
      drops,
      failures: sample.counts.failures,
    },
    looks: observations,
    facts: [
      ...constructionFacts(construction),
      ...conditionFacts(protocol, rig, mass, pressure),
      ...tyreFacts({
        specimens: hit.map((name) => rows.get(name) ?? null),
        mountings: used.map((drop) => mountings.of(drop)),
        drops: used.map(({ drop }) => drop),
        pressure,
        temperature: protocol.temperature,
      }),
    ],
    refused: obstacleOf(samples, replayed),
    scale,
    evidence: sample,
  };
}

/** Why a run's own evidence may not be compared; null as a rule. */
function obstacleOf(samples: readonly Sample[], { conformance, provisional }: Replay): string | null {
  if (samples.length > 1) {
    const names = samples.map(({ name }) => name).join(', ');
    return `the run holds several samples (${names}), which differ in more than the construction`;
  }
  if (samples[0]!.refused !== null) return samples[0]!.refused;
  if (provisional.length > 0) return `provisional until settled: ${provisional.join('; ')}`;
  return conformance.status === 'invalid' ? conformance.why : null;
}

function sideOf({ test, scale, evidence, sample }: Prepared) {
  return { label: sample.label, test, scale, sample: evidence };
}

function idleProblem(name: string, factors: readonly ComparedFactor[]): Problem {
  const differing = factors.filter(({ state }) => state === 'differs').map((factor) => factor.name);
  const expected = differing.length === 0 ? 'nothing differs' : `what differs is ${differing.join(', ')}`;
  const message = `found --despite ${quote(name)}, expected a factor that differs; ${expected}`;
  return { file: '--despite', line: null, column: null, code: 'idle-override', message };
}

function notesOf(factors: readonly ComparedFactor[], prepared: readonly Prepared[]): string[] {
  const declared = factors.filter(({ state }) => state === 'declared').map(({ name }) => name);
  const several =
    declared.length > 1
      ? [
          `${declared.length} declared factors differ at once (${declared.join(', ')}): the effect belongs to no single one`,
        ]
      : [];
  const distributions = new Set(prepared.map(({ test }) => test.protocol.distribution));
  const first = prepared[0]!.test.protocol.distribution;
  const law =
    distributions.size > 1
      ? [`the protocols assume different strength laws; ${first}, that of the first, is used`]
      : [];
  const repeated = prepared
    .filter(({ sample }) => sample.drops > sample.specimens)
    .filter(({ test }) => test.protocol.method !== 'rising-height')
    .map(
      ({ sample }) =>
        `${sample.label}: several drops on one tyre count as if on tyres of their own; intervals may be too narrow`,
    );
  return [...several, ...law, ...repeated];
}
