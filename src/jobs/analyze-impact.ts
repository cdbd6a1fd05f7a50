import type { Criterion, EstimatorName, Specification } from '../documents/kinds.ts';
import { askedForEstimate } from '../impact/estimates/asked-for.ts';
import { estimateImpact, type ImpactEstimates } from '../impact/estimates/impact-estimates.ts';
import { plannedPressure } from '../impact/replay/conditions.ts';
import type { Replay } from '../impact/replay/replay.ts';
import type { Finding } from '../logs/finding.ts';
import { echo } from '../problem/echo.ts';
import type { ImpactResult } from '../result/analysis.ts';
import { type EnergyScale, massUsed, potentialEnergy } from '../rig/energy.ts';
import { type Evidence, type Measurement, withoutEvidence } from '../verdict/evidence.ts';
import { judgeSpecification } from '../verdict/judge-specification.ts';
import type { ImpactTest } from './impact-test.ts';
import { CUT_SHORT, replayTest } from './replay-test.ts';

/**
 * Replay, estimates and verdict of a drop test whose files have been read.
 *
 * @param asked estimators beside those of the method and the protocol.
 */
export function analyzeImpact(test: ImpactTest, asked: readonly EstimatorName[] = []): ImpactResult {
  const { protocol, rig, constructions, specification } = test;
  const { drops, scale, replayed } = replayTest(test);
  const mass = massUsed(scale, drops);
  const estimated = estimateImpact(
    {
      protocol,
      replay: replayed,
      energyOf: scale.of,
      energyPerHeight: energyPerHeight(scale, mass.mass),
      refused: replayed.conformance.why ?? severalConstructions(test),
      asked,
      constructionOf: constructionOf(test),
      planned: plannedConditions(test),
    },
    specification?.criteria.flatMap(({ probability }) => probability ?? []) ?? [],
  );
  const judged = specification ? judge(specification, test, replayed, estimated) : null;
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
      ...mass,
    },
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
      censored: estimated.observations.censored,
    },
    path: replayed.drops.map(({ drop, use }) => ({
      line: drop.line,
      specimen: drop.specimen,
      series: drop.series,
      height: drop.height,
      energy: scale.of(drop),
      outcome: drop.outcome,
      used: use === 'used',
    })),
    estimates: estimated.estimates,
    goodness: estimated.goodness,
    regression: estimated.regression,
    criteria: judged?.criteria ?? [],
    verdict: judged?.verdict ?? null,
  };
}

/** J for a mm of height, where one mass served all drops and energy goes by height. */
function energyPerHeight({ definition, gravity }: EnergyScale, mass: number | null): number | null {
  return definition === 'potential' && mass !== null ? potentialEnergy(mass, gravity.value, 1) : null;
}

/** The construction of a specimen by the table of specimens, or the only one of the run. */
function constructionOf({ register, constructions }: ImpactTest): (specimen: string) => string | null {
  const rows = new Map((register?.specimens ?? []).map((row) => [row.specimen, row.construction]));
  const only = constructions.length === 1 ? constructions[0]!.id : null;
  return (specimen) => rows.get(specimen) ?? only;
}

/** What the protocol plans for these tyres; a pressure by size needs a construction with that size. */
function plannedConditions({ protocol, constructions }: ImpactTest) {
  const pressures = constructions.map(
    (construction) => plannedPressure(protocol, construction)?.value ?? null,
  );
  const fallback = plannedPressure(protocol, null)?.value ?? null;
  const one = new Set(pressures).size === 1 ? pressures[0]! : fallback;
  return { pressure: one, temperature: protocol.temperature?.value ?? null };
}

/** Tyres of two constructions are no sample of one strength, and are never pooled in silence. */
function severalConstructions({ register, logs }: ImpactTest): string | null {
  if (register === null) return null;
  const dropped = new Set(logs.flatMap(({ drops }) => drops.map(({ specimen }) => specimen)));
  const found = new Set(
    register.specimens.flatMap(({ specimen, construction }) =>
      construction !== null && dropped.has(specimen) ? [construction] : [],
    ),
  );
  if (found.size < 2) return null;
  const names = [...found].map((name) => echo(name, 24)).join(', ');
  return `the specimens belong to ${found.size} constructions (${names}), which are no sample of one strength; give each its own run`;
}

function judge(
  specification: Specification,
  { protocol, register }: ImpactTest,
  { conformance }: Replay,
  estimated: ImpactEstimates,
) {
  const { specimens } = estimated.observations;
  return judgeSpecification(specification, {
    protocol,
    evidenceFor: (criterion) =>
      conformance.status === 'invalid' || estimated.fit === null
        ? withoutEvidence('invalid', estimated.estimates[0]?.why ?? null, specimens)
        : evidenceOf(criterion, estimated),
    measurementsFor: (criterion: Criterion): readonly Measurement[] =>
      (register?.specimens ?? []).map(({ specimen, measured }) => ({
        specimen,
        value: measured[criterion.quantity] ?? null,
      })),
  });
}

function evidenceOf(criterion: Criterion, { fit, heightPerEnergy, observations }: ImpactEstimates): Evidence {
  const { specimens } = observations;
  const found = fit && askedForEstimate(fit, criterion, heightPerEnergy);
  if (found === null) {
    return withoutEvidence('none', `this drop test gives no ${criterion.quantity}`, specimens);
  }
  const { value, standardError, lower, upper, why } = found;
  return {
    status: 'valid',
    estimate: value,
    standardError,
    lower,
    upper,
    method: 'censored-likelihood',
    interval: 'profile-likelihood',
    specimens,
    why,
  };
}

function notesOf({ logs, register }: ImpactTest, { notes }: Replay): string[] {
  const seen = logs.flatMap(({ path, findings }) =>
    findings.filter(({ code }) => !CUT_SHORT.has(code)).map((finding) => findingSentence(path, finding)),
  );
  const inRegister = register?.findings.map((finding) => findingSentence(register.path, finding)) ?? [];
  return [...notes, ...seen, ...inRegister];
}

/** What was noticed while a file was read, with the file's name: not kept back from the reader of the result. */
function findingSentence(path: string, { message, line, column }: Finding): string {
  return `${[path, line, column].filter((part) => part !== null).join(':')}: ${message}`;
}
