import type { Criterion, Specification } from '../documents/kinds.ts';
import { askedForEstimate } from '../impact/estimates/asked-for.ts';
import { estimateImpact, type ImpactEstimates } from '../impact/estimates/impact-estimates.ts';
import { type Replay, replay } from '../impact/replay/replay.ts';
import type { Finding } from '../logs/finding.ts';
import { joinLogs } from '../logs/join.ts';
import { echo } from '../problem/echo.ts';
import type { ImpactResult } from '../result/analysis.ts';
import { type EnergyScale, energyScale, massUsed, potentialEnergy } from '../rig/energy.ts';
import { type Evidence, type Measurement, withoutEvidence } from '../verdict/evidence.ts';
import { judgeSpecification } from '../verdict/judge-specification.ts';
import type { ImpactTest } from './impact-test.ts';

/** Replay, estimates and verdict of a drop test whose files have been read. */
export function analyzeImpact(test: ImpactTest): ImpactResult {
  const { protocol, rig, constructions, specification, logs, register } = test;
  const { drops } = joinLogs(logs);
  const columns = new Set(logs.flatMap((log) => [...log.columns]));
  const scale = energyScale(protocol, rig, drops, columns);
  const replayed = replay({
    protocol,
    rig,
    drops,
    columns,
    specimens: register?.specimens ?? null,
    constructions,
    scale,
    unsaved: logs.flatMap(({ path, findings }) =>
      findings
        .filter(({ code }) => CUT_SHORT.has(code))
        .map(({ message, line }) => ({ file: path, line, message })),
    ),
  });
  const mass = massUsed(scale, drops);
  const estimated = estimateImpact(
    {
      protocol,
      replay: replayed,
      energyOf: scale.of,
      energyPerHeight: energyPerHeight(scale, mass.mass),
      refused: replayed.conformance.why ?? severalConstructions(test),
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
    criteria: judged?.criteria ?? [],
    verdict: judged?.verdict ?? null,
  };
}

/** Findings that mean that the rig's computer stopped while it wrote (DROP-51). */
const CUT_SHORT: ReadonlySet<string> = new Set(['truncated-line', 'nul-padding']);

/** J for a mm of height, where one mass served all drops and energy goes by height. */
function energyPerHeight({ definition, gravity }: EnergyScale, mass: number | null): number | null {
  return definition === 'potential' && mass !== null ? potentialEnergy(mass, gravity.value, 1) : null;
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
