import type { ConformanceStatus, ListedDeviation } from '../../conformance/deviation.ts';
import { DeviationList } from '../../conformance/deviation-list.ts';
import { conformanceStatus } from '../../conformance/status.ts';
import type { Construction, ImpactProtocol, Rig } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Specimen } from '../../logs/register.ts';
import type { EnergyScale } from '../../rig/energy.ts';
import { hitsAllowed } from '../rules/method-rules.ts';
import type { Advice } from '../rules/rule.ts';
import { admit } from './admission.ts';
import { checkMass, checkPressure, checkTemperature, plannedPressure, unrecorded } from './conditions.ts';
import { membership } from './membership.ts';
import { checkNumbering } from './numbering.ts';
import { type ReplayedDrop, type Visit, visiting } from './replayed.ts';
import { retirement } from './retirement.ts';
import { followSeries, type SeriesOutcome } from './series.ts';
import { hitCount, siteNumbering, siteWatch } from './sites.ts';
import { checkStatedMasses } from './stated-masses.ts';
import { checkVelocity, checkVelocityCoverage } from './velocity.ts';

export interface ReplayInput {
  readonly protocol: ImpactProtocol;
  readonly rig: Rig | null;
  /** All drops of the test, in the order in which they were made. */
  readonly drops: readonly Drop[];
  /** Quantities that the logs have a column for. */
  readonly columns: ReadonlySet<string>;
  /** Null where the run names no table of specimens. */
  readonly specimens: readonly Specimen[] | null;
  readonly constructions: readonly Construction[];
  readonly scale: EnergyScale;
  /** Where reading found that the rig's computer had stopped while it wrote. */
  readonly unsaved?: readonly Unsaved[];
}

export interface Unsaved {
  readonly file: string;
  readonly line: number | null;
  readonly message: string;
}

/** A log gone through by its protocol's rule. */
export interface Replay {
  readonly method: ImpactProtocol['method'];
  readonly drops: readonly ReplayedDrop[];
  readonly series: readonly SeriesOutcome[];
  readonly deviations: readonly ListedDeviation[];
  readonly conformance: { readonly status: ConformanceStatus; readonly why: string | null };
  readonly counts: ReplayCounts;
  /** What is worth knowing and is no deviation: sentences. */
  readonly notes: readonly string[];
}

export interface ReplayCounts {
  readonly drops: number;
  /** Drops that stand in the estimate, and the failures among them. */
  readonly validDrops: number;
  readonly failures: number;
  /** Drops left out of the estimate, without those that came after the end of a rise. */
  readonly excluded: number;
  /** Of these, the ones that the log left out without a reason. */
  readonly unexplained: number;
  /** Specimens in the log, and those with a drop in the estimate. */
  readonly specimens: number;
  readonly usedSpecimens: number;
}

/**
 * Replays a log through its protocol: what each drop should have been, whether it counts, and every departure.
 * Linear in the number of drops.
 *
 * @throws InputError for a method or protocol that no rule can follow.
 */
export function replay(input: ReplayInput): Replay {
  const list = new DeviationList();
  for (const { file, line, message } of input.unsaved ?? []) {
    list.add({ code: 'DROP-51', found: () => message, file, ...(line === null ? {} : { line }) });
  }
  const visits = input.drops.map(visiting);
  const notes = checkEachDrop(input, visits, list);
  const followed = followSeries(input.protocol, input.rig, visits, list);
  const counts = countDrops(visits);
  return {
    method: input.protocol.method,
    drops: visits,
    series: followed.series,
    deviations: list.listed(),
    conformance: conformanceStatus(list, {
      dropsOut: counts.excluded,
      drops: counts.drops,
      specimensOut: counts.specimens - counts.usedSpecimens,
      specimens: counts.specimens,
    }),
    counts,
    notes: [...notes, ...followed.notes],
  };
}

/** The advice for the next drop: that of the series which the last drop belongs to. */
export function nextAdvice({ series }: Replay): Advice | null {
  let last: SeriesOutcome | null = null;
  for (const outcome of series) {
    if (last === null || outcome.lastPlace > last.lastPlace) last = outcome;
  }
  return last?.advice ?? null;
}

/** What a drop shows by itself and by the hits on its specimen before it. */
function checkEachDrop(input: ReplayInput, visits: readonly Visit[], list: DeviationList): string[] {
  const { protocol, scale } = input;
  const members = membership(input.specimens, input.constructions);
  const retired = retirement(protocol, siteNumbering());
  const watchSite = siteWatch(protocol.sites);
  const countHit = hitCount(protocol.sites, hitsAllowed(protocol));
  let unsettled = 0;
  checkStatedMasses(protocol, input.rig, list);
  checkNumbering(visits, list);
  for (const visit of visits) {
    admit(visit, list);
    members.check(visit, list);
    if (!visit.drop.valid) {
      watchSite(visit, false, list);
      continue;
    }
    retired.check(visit, list);
    if (visit.use === 'ignored' && !visit.steers) continue;
    const construction = members.constructionOf(visit.drop.specimen);
    const pressure = plannedPressure(protocol, construction);
    if (pressure === null && protocol.pressure !== null) unsettled += 1;
    checkMass(visit, scale.statedMass, list);
    checkPressure(visit, pressure, list);
    checkTemperature(visit, protocol.temperature, list);
    checkVelocity(visit, protocol.energy, scale.gravity.value, list);
    watchSite(visit, visit.steers, list);
    if (visit.steers) countHit(visit, list);
    retired.note(visit);
  }
  checkVelocityCoverage(visits, input.columns, protocol.energy, list);
  return unrecorded(protocol, visits, unsettled);
}

function countDrops(visits: readonly Visit[]): ReplayCounts {
  const specimens = new Set<string>();
  const used = new Set<string>();
  let validDrops = 0;
  let failures = 0;
  let excluded = 0;
  let unexplained = 0;
  for (const { drop, use, steers } of visits) {
    specimens.add(drop.specimen);
    if (use === 'used') {
      used.add(drop.specimen);
      validDrops += 1;
      if (drop.outcome === 'failed') failures += 1;
      // What is ignored after the end of a rise was never part of it; a single look that is ignored is missing.
    } else if (use !== 'ignored' || steers) excluded += 1;
    if (use === 'unexplained') unexplained += 1;
  }
  return {
    drops: visits.length,
    validDrops,
    failures,
    excluded,
    unexplained,
    specimens: specimens.size,
    usedSpecimens: used.size,
  };
}
