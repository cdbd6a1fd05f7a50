import type { ConformanceStatus, ListedDeviation } from '../../conformance/deviation.ts';
import { DeviationList } from '../../conformance/deviation-list.ts';
import { conformanceStatus, refusalOf } from '../../conformance/status.ts';
import type { Construction, ImpactProtocol, Rig } from '../../documents/kinds.ts';
import type { RigCheck } from '../../logs/checks.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Mounting } from '../../logs/mountings.ts';
import type { Specimen } from '../../logs/register.ts';
import { counted } from '../../quantity/format.ts';
import type { EnergyScale } from '../../rig/energy.ts';
import type { StatedMass } from '../../rig/mass.ts';
import type { Advice } from '../rules/rule.ts';
import { countDrops, leftOutOf, type ReplayCounts } from './counts.ts';
import { checkEachDrop } from './each-drop.ts';
import { type GroupKey, grouped, groupName } from './groups.ts';
import { mountingsOf, rimKind } from './mounting.ts';
import type { ReplayedDrop, Visit } from './replayed.ts';
import { visiting } from './replayed.ts';
import { followSeries, type SeriesOutcome } from './series.ts';
import { checkSession } from './session.ts';
import { tyresOf } from './tyres.ts';

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
  readonly mountings?: readonly Mounting[];
  /** Null where the run names no table of rig checks. */
  readonly checks?: readonly RigCheck[] | null;
  /** The mass stated for a drop, where logs of several rigs make one test; the scale's for all, if not given. */
  readonly statedMassOf?: (drop: Drop) => StatedMass | null;
  /** Criteria of the specification that rest on another version of the protocol. */
  readonly pinned?: readonly Pinned[];
  /** What the operator saw and acted on, for drops whose outcome was amended later. */
  readonly acted?: ReadonlyMap<Drop, Drop['outcome']>;
}

export interface Pinned {
  readonly file: string;
  readonly line: number;
  readonly criterion: string;
  readonly version: string;
}

export interface Unsaved {
  readonly file: string;
  readonly line: number | null;
  readonly message: string;
}

/** Drops that speak of one strength: all of a log as a rule, those of one construction in a session with several. */
export interface ReplayedSample {
  readonly method: ImpactProtocol['method'];
  readonly drops: readonly ReplayedDrop[];
  readonly series: readonly SeriesOutcome[];
  readonly counts: ReplayCounts;
}

export interface Sample extends ReplayedSample {
  readonly key: GroupKey;
  /** What tells it from the others; null for the only one. */
  readonly name: string | null;
  /** Why nothing may be estimated from it; null as a rule. */
  readonly refused: string | null;
}

/** A log gone through by its protocol's rule. */
export interface Replay extends ReplayedSample {
  readonly samples: readonly Sample[];
  readonly deviations: readonly ListedDeviation[];
  readonly conformance: { readonly status: ConformanceStatus; readonly why: string | null };
  /** Why every number waits for something to be settled; empty as a rule. */
  readonly provisional: readonly string[];
  /** What is worth knowing and is no deviation: sentences. */
  readonly notes: readonly string[];
}

/**
 * Replays a log through its protocol: what each drop should have been, whether it counts, and every departure.
 * Linear in the number of drops.
 *
 * @throws InputError for a method or protocol that no rule can follow.
 */
export function replay(input: ReplayInput): Replay {
  const { protocol, rig, drops, constructions, acted } = input;
  const list = new DeviationList();
  for (const { file, line, message } of input.unsaved ?? []) {
    list.add({ code: 'DROP-51', found: () => message, file, ...(line === null ? {} : { line }) });
  }
  const tyres = tyresOf(input.specimens, constructions);
  const visits: Visit[] = drops.map((drop, index) =>
    visiting(
      drop,
      index,
      tyres.of(drop.specimen),
      acted?.has(drop) ? acted.get(drop)! : drop.outcome,
      input.protocol.vary,
    ),
  );
  const mountings = mountingsOf(input.mountings ?? []);
  const groups = grouped(visits, constructions, (visit) => rimKind(mountings.of(visit)));
  const session = { ...input, visits, tyres: tyres.all, groups, mountings };
  const notes = checkEachDrop(session, list);
  const provisional = checkSession(session, list);
  const followed = followSeries(protocol, rig, groups, visits, list);
  const keys = groups.map(({ key }) => key);
  const samples = groups.map(({ key, visits: own }, index): Sample => {
    const counts = countDrops(own);
    return {
      key,
      name: groupName(key, keys),
      method: protocol.method,
      drops: own,
      series: followed.series.filter((series) => series.samples.has(index)),
      counts,
      refused: refusalOf(list, leftOutOf(counts)),
    };
  });
  const judged = samples.filter(({ key }) => key.role === 'candidate');
  return {
    method: protocol.method,
    drops: visits,
    series: followed.series,
    samples,
    deviations: list.listed(),
    conformance: conformanceStatus(list, ...judged.map(({ counts }) => leftOutOf(counts))),
    provisional,
    counts: samples.length === 1 ? samples[0]!.counts : countDrops(visits),
    notes: [...setAsideNote(visits), ...notes, ...followed.notes],
  };
}

/** The advice for the next drop: that of the series which the last drop belongs to. */
export function nextAdvice({ series }: Pick<Replay, 'series'>): Advice | null {
  let last: SeriesOutcome | null = null;
  for (const outcome of series) {
    if (last === null || outcome.lastPlace > last.lastPlace) last = outcome;
  }
  return last?.advice ?? null;
}

function setAsideNote(visits: readonly Visit[]): string[] {
  const aside = visits.reduce((count, { use }) => count + (use === 'set-aside' ? 1 : 0), 0);
  if (aside === 0) return [];
  return [
    `${counted(aside, 'drop')} on reference or spare tyres ${aside === 1 ? 'is' : 'are'} set aside: no part of any series or estimate.`,
  ];
}
