import type { ConformanceStatus, ListedDeviation } from '../../conformance/deviation.ts';
import { DeviationList } from '../../conformance/deviation-list.ts';
import { conformanceStatus, refusalOf } from '../../conformance/status.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { counted } from '../../quantity/format.ts';
import type { Advice } from '../rules/rule.ts';
import { checkSession } from './check-session.ts';
import { countDrops, leftOutOf, type ReplayCounts } from './counts.ts';
import { checkEachDrop } from './each-drop.ts';
import { type GroupKey, grouped, groupName } from './groups.ts';
import { mountingsOf, rimKind } from './mounting.ts';
import { remarkNotes } from './remarks.ts';
import type { ReplayedDrop, Visit } from './replayed.ts';
import { visiting } from './replayed.ts';
import { followSeries, type SeriesOutcome } from './series.ts';
import type { ReplayInput } from './session.ts';
import { tyresOf } from './tyres.ts';

export type { ReplayInput } from './session.ts';

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
  const rigOf = input.rigOf ?? (() => rig);
  const list = new DeviationList(protocol.heavier);
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
  const followed = followSeries(protocol, rigOf, groups, visits, list);
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
    notes: [...setAsideNote(visits), ...notes, ...remarkNotes(visits), ...followed.notes],
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
