import { type Replay, replay } from '../impact/replay/replay.ts';
import type { Drop } from '../logs/drop.ts';
import { joinLogs } from '../logs/join.ts';
import { type EnergyScale, energyScale } from '../rig/energy.ts';
import type { ImpactTest } from './impact-test.ts';

/** A test's drops as one log, gone through by its protocol. */
export interface ReplayedTest {
  readonly drops: readonly Drop[];
  readonly scale: EnergyScale;
  readonly replayed: Replay;
}

/** Findings that mean that the rig's computer stopped while it wrote (DROP-51). */
export const CUT_SHORT: ReadonlySet<string> = new Set(['truncated-line', 'nul-padding']);

/**
 * Joins the logs of a test and replays them.
 *
 * @throws InputError for logs or documents that no energy or no rule can be had from
 */
export function replayTest(test: ImpactTest): ReplayedTest {
  const { protocol, rig, constructions, logs, register } = test;
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
  return { drops, scale, replayed };
}
