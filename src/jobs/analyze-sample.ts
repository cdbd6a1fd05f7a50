import type { Criterion, EstimatorName, ImpactProtocol, Specification } from '../documents/kinds.ts';
import { askedForEstimate } from '../impact/estimates/asked-for.ts';
import { estimateImpact, type ImpactEstimates } from '../impact/estimates/impact-estimates.ts';
import type { Replay, Sample } from '../impact/replay/replay.ts';
import type { Drop } from '../logs/drop.ts';
import type { JudgedCriterion, Verdict } from '../result/criterion.ts';
import type { Estimate, IntervalKind } from '../result/estimate.ts';
import { type EnergyScale, massUsed, potentialEnergy } from '../rig/energy.ts';
import { type Evidence, type Measurement, withoutEvidence } from '../verdict/evidence.ts';
import { judgeSpecification } from '../verdict/judge-specification.ts';
import type { ImpactTest } from './impact-test.ts';
import { plannedConditions } from './planned-conditions.ts';
import { settingOf, withRig } from './rig-uncertainty.ts';

/** What one sample of a test says, with its name on every entry where there are several. */
export interface AnalyzedSample {
  readonly sample: Sample;
  readonly estimated: ImpactEstimates;
  readonly estimates: readonly Estimate[];
  readonly criteria: readonly JudgedCriterion[];
  /** Null without a specification, and for what is not judged. */
  readonly verdict: Verdict | null;
}

/** What every sample of a test is analysed by. */
export interface SampleContext {
  readonly test: ImpactTest;
  readonly replayed: Replay;
  readonly scale: EnergyScale;
  /** Estimators asked for beside those of the method and the protocol. */
  readonly asked: readonly EstimatorName[];
  readonly intervals: IntervalKind;
}

/** Estimates one sample and, where it is a candidate's, judges it. */
export function analyzeSample(context: SampleContext, sample: Sample): AnalyzedSample {
  const { specification } = context.test;
  const estimated = estimateSample(context, sample);
  const label = sample.name === null ? {} : { sample: sample.name, construction: sample.key.construction };
  const isJudged = specification !== null && sample.key.role === 'candidate';
  const judged = isJudged ? judge(specification, context, sample, estimated) : null;
  return {
    sample,
    estimated,
    estimates: estimated.estimates.map((estimate) => ({ ...estimate, ...label })),
    criteria: judged?.criteria.map((criterion) => ({ ...criterion, ...label })) ?? [],
    verdict: judged?.verdict ?? null,
  };
}

/** The estimates of one sample alone. */
export function estimateSample(
  { test, scale, asked, intervals }: SampleContext,
  sample: Sample,
): ImpactEstimates {
  const { protocol, rig, specification } = test;
  const { mass } = massUsed(scale, dropsOf(sample));
  const [first] = dropsOf(sample);
  return estimateImpact(
    {
      protocol,
      rig,
      replay: sample,
      energyOf: scale.of,
      energyPerHeight: energyPerLevel(scale, first, mass, protocol),
      refused: sample.refused,
      asked,
      intervals,
      constructionOf: constructionOf(test),
      planned: plannedConditions(test, sample),
    },
    specification?.criteria.flatMap(({ probability }) => probability ?? []) ?? [],
  );
}

function* dropsOf({ drops }: Sample) {
  for (const { drop } of drops) yield drop;
}

/**
 * J for a mm of height, where one mass served all drops and energy goes by height; for a kg where the mass is varied at
 * one height.
 */
function energyPerLevel(
  { definition, gravity: ofRun, gravityOf }: EnergyScale,
  first: Drop | undefined,
  mass: number | null,
  { vary, height }: ImpactProtocol,
): number | null {
  const gravity = first === undefined ? ofRun : gravityOf(first);
  if (vary === 'mass') return height === null ? null : potentialEnergy(1, gravity.value, height);
  return definition === 'potential' && mass !== null ? potentialEnergy(mass, gravity.value, 1) : null;
}

/** The construction of a specimen by the table of specimens, or the only one of the run. */
export function constructionOf({ register, constructions }: ImpactTest): (specimen: string) => string | null {
  const only = constructions.length === 1 ? constructions[0]!.id : null;
  if (register === null) return () => only;
  const rows = new Map(register.specimens.map((row) => [row.specimen, row.construction]));
  return (specimen) => rows.get(specimen) ?? only;
}

function judge(
  specification: Specification,
  { test, replayed, scale }: SampleContext,
  sample: Sample,
  estimated: ImpactEstimates,
) {
  const { specimens } = estimated.observations;
  const obstacle = obstacleTo(replayed, estimated);
  const setting = settingOf(test, scale, sample);
  return judgeSpecification(specification, {
    protocol: test.protocol,
    evidenceFor: (criterion) =>
      obstacle === undefined
        ? withRig(criterion, evidenceOf(criterion, estimated), test, setting)
        : withoutEvidence('invalid', obstacle, specimens),
    measurementsFor: (criterion) => measurements(test, sample, criterion),
  });
}

/** Why no verdict may be given on the tests; undefined where one may. */
function obstacleTo({ conformance, provisional }: Replay, { fit, estimates }: ImpactEstimates) {
  if (provisional.length > 0) return `provisional until settled: ${provisional.join('; ')}`;
  if (fit === null) return estimates[0]?.why ?? null;
  return conformance.status === 'invalid' ? conformance.why : undefined;
}

/** What was measured on the candidates of a sample's construction, whether they were hit or not. */
function measurements({ register }: ImpactTest, { key, name }: Sample, criterion: Criterion): Measurement[] {
  const column = MEASURED_COLUMNS[criterion.quantity] ?? criterion.quantity;
  const isOf = (construction: string | null) =>
    name === null ||
    construction === null ||
    key.construction === null ||
    `${key.construction}@`.startsWith(`${construction}@`);
  return (register?.specimens ?? [])
    .filter(({ role, construction }) => (role === null || role === 'candidate') && isOf(construction))
    .map(({ specimen, measured }) => ({ specimen, value: measured[column] ?? null }));
}

/** The column of the specimens table that holds a quantity, where it has another name. */
const MEASURED_COLUMNS: Readonly<Record<string, string>> = { pressureLoss: 'pressure loss' };

function evidenceOf(criterion: Criterion, estimated: ImpactEstimates): Evidence {
  const { fit, singleHit, level, observations } = estimated;
  const { specimens } = observations;
  const ofOneHit = criterion.method === 'specimen-effect' ? singleHit : null;
  if (typeof ofOneHit === 'string') return withoutEvidence('none', ofOneHit, specimens);
  // Where each tyre was hit once the likelihood speaks of single hits on fresh tyres already.
  const judged = ofOneHit ?? fit;
  const found = judged && askedForEstimate(judged, criterion, level);
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
    method: ofOneHit === null ? 'censored-likelihood' : 'specimen-effect',
    interval: found.interval,
    specimens,
    why,
  };
}
