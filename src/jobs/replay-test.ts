import type { Rig } from '../documents/kinds.ts';
import { type AppliedAmendment, amend } from '../impact/amend.ts';
import { type Replay, replay } from '../impact/replay/replay.ts';
import type { Pinned } from '../impact/replay/session.ts';
import type { Drop } from '../logs/drop.ts';
import { joinLogs } from '../logs/join.ts';
import { type EnergyScale, energyScale } from '../rig/energy.ts';
import type { ImpactTest } from './impact-test.ts';
import { logsOfRigs } from './logs-of-rigs.ts';

/** A test's drops as one log, gone through by its protocol. */
export interface ReplayedTest {
  /** As amended. */
  readonly drops: readonly Drop[];
  readonly amended: readonly AppliedAmendment[];
  readonly scale: EnergyScale;
  readonly replayed: Replay;
  /** The rig as it stood when a drop was made. */
  readonly rigOf: (drop: Drop) => Rig | null;
  /** Drops that stood in an earlier log of the same rig too and count once, by the path of the log. */
  readonly collapsed: ReadonlyMap<string, number>;
}

/** Findings that mean that the rig's computer stopped while it wrote (DROP-51). */
export const CUT_SHORT: ReadonlySet<string> = new Set(['truncated-line', 'nul-padding']);

/**
 * Joins the logs of a test and replays them.
 *
 * @throws InputError for logs or documents that no energy or no rule can be had from
 */
export function replayTest(test: ImpactTest): ReplayedTest {
  const { protocol, rig, constructions, logs, register, mountings, checks, amendments } = test;
  const ofRigs = logsOfRigs(test);
  const { rigOf } = ofRigs;
  const { drops: joined, collapsed } = joinLogs(ofRigs.logs);
  const { drops, acted, applied } =
    amendments === null ? NOT_AMENDED(joined) : amend(joined, amendments.records);
  const columns = new Set(logs.flatMap((log) => [...log.columns]));
  if (ofRigs.areSeveral) columns.add('rig');
  const scale = energyScale(protocol, rig, drops, columns, rigOf);
  const replayed = replay({
    protocol,
    rig,
    drops,
    columns,
    specimens: register?.specimens ?? null,
    constructions,
    scale,
    rigOf,
    pinned: pinnedOf(test),
    mountings: mountings?.records ?? [],
    checks: checks?.records ?? null,
    acted,
    unsaved: logs.flatMap(({ path, findings }) =>
      findings
        .filter(({ code }) => CUT_SHORT.has(code))
        .map(({ message, line }) => ({ file: path, line, message })),
    ),
  });
  return { drops, amended: applied, scale, replayed, rigOf, collapsed };
}

const NOT_AMENDED = (drops: readonly Drop[]) => ({ drops, acted: new Map(), applied: [] });

/** Criteria that rest on another version of the protocol that was followed: DROP-55. */
function pinnedOf({ specification, protocol }: ImpactTest): Pinned[] {
  return (specification?.criteria ?? []).flatMap((criterion, i) => {
    const asked = criterion.protocol;
    if (asked === null || asked.id !== protocol.id || asked.version === null) return [];
    if (asked.version === protocol.version) return [];
    const { source } = specification!;
    const { line } = source.locate(['criteria', i, 'protocol']);
    return [{ file: source.path, line, criterion: criterion.id, version: asked.version }];
  });
}
