import { Findings, type YamlDocument } from './findings.ts';
import { impactShape, massShape, type WholeImpact } from './impact-fields.ts';
import { checkImpactRules } from './impact-rules.ts';
import type { ImpactProtocol, Regression, Sites } from './kinds.ts';
import { readFields } from './read-fields.ts';

/**
 * The protocol of a drop test from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function impactProtocol(document: YamlDocument): ImpactProtocol {
  const findings = new Findings(document);
  const shape = document.value.vary === 'mass' ? massShape() : impactShape();
  const fields = readFields(shape, document.value, [], findings);
  checkImpactRules(fields, findings);
  findings.throwIfAny();
  return { ...build(fields as WholeImpact), source: document.source };
}

function build(fields: WholeImpact): Omit<ImpactProtocol, 'source'> {
  return {
    format: fields.format,
    kind: fields.kind,
    id: fields.id,
    version: fields.version,
    title: fields.title ?? null,
    method: fields.method,
    failure: fields.failure ?? null,
    failureModes: fields.failureModes ?? null,
    mounting: fields.mounting
      ? {
          rimWidth: fields.mounting.rimWidth ?? null,
          rimType: fields.mounting.rimType ?? null,
          tube: fields.mounting.tube ?? null,
          sealant: fields.mounting.sealant ?? null,
          insert: fields.mounting.insert ?? null,
          torque: fields.mounting.torque ?? null,
        }
      : null,
    preparation: fields.preparation
      ? {
          conditioning: fields.preparation.conditioning ?? null,
          age: fields.preparation.age ?? null,
        }
      : null,
    leakCheck: fields.leakCheck
      ? {
          method: fields.leakCheck.method ?? null,
          hold: fields.leakCheck.hold ?? null,
          loss: fields.leakCheck.loss ?? null,
        }
      : null,
    heavier: fields.heavier ?? [],
    rigCheck: fields.rigCheck ?? null,
    mass: fields.mass ?? null,
    gravity: fields.gravity ?? null,
    energy: fields.energy ?? 'potential',
    vary: fields.vary ?? 'height',
    height: fields.height ?? null,
    start: fields.start ?? null,
    step: fields.step ?? null,
    levels: fields.levels ?? null,
    perLevel: fields.perLevel ?? null,
    survivalsToRaise: fields.survivalsToRaise ?? null,
    guess: fields.guess ?? null,
    heightTolerance: fields.heightTolerance ?? 1,
    limits: { min: fields.limits?.min ?? null, max: fields.limits?.max ?? null },
    pressure: fields.pressure ?? null,
    temperature: fields.temperature ?? null,
    sites: sitesOf(fields),
    afterFailure: fields.sites?.afterFailure ?? fields.afterFailure ?? 'retire',
    stop: fields.stop ? given(fields.stop) : null,
    damagePerHit: fields.damagePerHit ?? null,
    estimators: fields.estimators ?? [],
    regression: regressionOf(fields),
    distribution: fields.distribution ?? 'normal',
    confidence: fields.confidence ?? 0.95,
    defaults: defaultsOf(fields),
  };
}

/** A specimen is hit once, unless the method or the protocol hits it again without saying how often. */
function sitesOf({ sites = {}, method }: WholeImpact): Sites {
  const isRepeated =
    method === 'rising-height' || sites.each === 'same-spot' || sites.each === 'series-per-site';
  return {
    perSpecimen: sites.perSpecimen ?? (isRepeated ? null : 1),
    spacing: sites.spacing ?? null,
    each: sites.each ?? 'new-spot',
    avoid: sites.avoid ?? [],
  };
}

function regressionOf({ regression }: WholeImpact): Regression | null {
  if (!regression) return null;
  const pairs = (regression.interactions ?? []).map(([one, other]) => [one!, other!] as const);
  return { covariates: regression.covariates, interactions: pairs, adjust: regression.adjust ?? [] };
}

/** What the document leaves out, and what is taken instead (CONTRACT: defaults, said in the output). */
function defaultsOf(fields: WholeImpact): string[] {
  const { sites, method, stop, perLevel } = fields;
  const said: string[] = [];
  if (fields.distribution === undefined) said.push('distribution: normal strength');
  if (fields.confidence === undefined)
    said.push('confidence: 95 %, two-sided intervals and one-sided bounds');
  if (fields.energy === undefined) said.push('energy: potential, m·g·h');
  if (fields.gravity === undefined) {
    said.push("gravity: the rig's where it is known, else standard gravity, 9.80665 m/s²");
  }
  if (sites?.perSpecimen === undefined && sitesOf(fields).perSpecimen === 1) {
    said.push('sites: one hit a specimen');
  }
  if (sites?.each === undefined && method === 'rising-height') said.push('sites: a new spot for every hit');
  if (stop === undefined && !(method === 'fixed-level' && perLevel !== undefined)) {
    said.push('stop: no stop rule; the operator ends the series');
  }
  return said;
}

/** An object without its undefined keys: an absent count is no count. */
function given<T extends object>(counts: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  const entries = Object.entries(counts).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { [K in keyof T]: Exclude<T[K], undefined> };
}
