import { conditionFacts } from '../../comparison/facts.ts';
import type { LimitsOf, Side } from '../../comparison/side.ts';
import { type TyreSources, tyreFacts } from '../../comparison/tyre-facts.ts';
import type { Construction } from '../../documents/kinds.ts';
import type { StrengthEstimate } from '../../impact/estimates/strength.ts';
import type { SingleHitStrength } from '../../impact/estimators/specimen-effect.ts';
import { observe } from '../../impact/observations.ts';
import { plannedPressure } from '../../impact/replay/conditions.ts';
import { mountingsOf } from '../../impact/replay/mounting.ts';
import type { Replay, Sample } from '../../impact/replay/replay.ts';
import { constructionsByName } from '../../impact/replay/tyres.ts';
import { type EnergyScale, massUsed } from '../../rig/energy.ts';
import { estimateSample } from '../analyze-sample.ts';
import type { ImpactTest } from '../impact-test.ts';
import { replayTest } from '../replay-test.ts';
import { refusedFor, sideHead } from './side-head.ts';

/** A side with what its energies were made by. */
export interface ImpactSide extends Side {
  readonly test: ImpactTest;
  readonly scale: EnergyScale;
  readonly evidence: Sample;
  readonly replayed: Replay;
}

/** Every sample of a drop test that was made on tyres of a known construction: a session holds several. */
export function impactSides(test: ImpactTest, path: string): ImpactSide[] {
  const { replayed, scale } = replayTest(test);
  const named = constructionsByName(test.constructions);
  return replayed.samples.map((evidence) => {
    const { construction: name } = evidence.key;
    const construction = (name === null ? undefined : named.get(name)) ?? onlyOf(test.constructions);
    return sideOf({ test, scale, replayed, evidence }, construction, path);
  });
}

type Made = Pick<ImpactSide, 'test' | 'scale' | 'replayed' | 'evidence'>;

function sideOf(made: Made, construction: Construction | null, path: string): ImpactSide {
  const { test, scale, replayed, evidence } = made;
  const { protocol, rig } = test;
  const { observations, specimens, drops } = observe(evidence, scale.of);
  const pressure = plannedPressure(protocol, construction);
  const tyres = tyresOf(made, pressure);
  const { mass } = massUsed(scale, tyres.drops);
  const estimated = estimateSample({ test, replayed, scale, asked: [], intervals: 'calibrated' }, evidence);
  const { fit } = estimated;
  const isCalibrated = fit?.quantile(0.5, protocol.confidence, 2).interval === 'calibrated';
  const { rig: rigOfSample } = evidence.key;
  const conditions = conditionFacts(protocol, rig, mass, pressure).map((fact) =>
    fact.name === 'rig' && rigOfSample !== null ? { ...fact, shown: rigOfSample } : fact,
  );
  const { failures } = evidence.counts;
  const known = { run: test.run, path, role: evidence.key.role, specimens, drops, failures };
  return {
    ...made,
    ...sideHead(known, construction, tyres.specimens, [...conditions, ...tyreFacts(tyres)]),
    looks: observations,
    observations,
    tyres,
    calibrated: fit !== null && isCalibrated ? limitsOf(fit.quantile) : null,
    single: singleHits(estimated.singleHit),
    refused: refusedFor(construction, obstacleOf(evidence, replayed)),
  };
}

function tyresOf({ test, evidence }: Made, pressure: TyreSources['pressure']): TyreSources {
  const used = evidence.drops.filter(({ use }) => use === 'used');
  const hit = [...new Set(used.map(({ drop }) => drop.specimen))];
  const rows = new Map(test.register?.specimens.map((row) => [row.specimen, row]));
  const mountings = mountingsOf(test.mountings?.records ?? []);
  return {
    specimens: hit.map((name) => rows.get(name) ?? null),
    mountings: used.map((drop) => mountings.of(drop)),
    drops: used.map(({ drop }) => drop),
    pressure,
    temperature: test.protocol.temperature,
  };
}

function onlyOf(constructions: readonly Construction[]): Construction | null {
  return constructions.length === 1 ? constructions[0]! : null;
}

function limitsOf(quantile: (share: number, level: number, sides: 1 | 2) => StrengthEstimate): LimitsOf {
  return (share, level, sides) => {
    const { value, lower, upper } = quantile(share, level, sides);
    return { best: value ?? Number.NaN, lower, upper };
  };
}

function singleHits(single: SingleHitStrength | string | null): Side['single'] {
  if (typeof single === 'string') return single;
  if (single === null) return 'each tyre was hit once: hits cannot be told from tyres';
  return { limits: limitsOf(single.quantile), untold: single.untold };
}

/** Why a sample's own evidence may not be compared; null as a rule. */
function obstacleOf({ refused }: Sample, { conformance, provisional }: Replay): string | null {
  if (refused !== null) return refused;
  if (provisional.length > 0) return `provisional until settled: ${provisional.join('; ')}`;
  return conformance.status === 'invalid' ? conformance.why : null;
}
