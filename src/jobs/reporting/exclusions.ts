import type { Replay } from '../../impact/replay/replay.ts';
import type { Exclusion } from '../../result/report.ts';

/** The drops that stand in no estimate, in their order, each with its reason. */
export function exclusionsOf({ drops }: Replay): Exclusion[] {
  return drops
    .filter(({ use }) => use !== 'used' && use !== 'set-aside')
    .map(({ drop, place, because }) => ({
      drop: drop.number ?? place,
      specimen: drop.specimen,
      line: drop.line,
      height: drop.height,
      because: because ?? drop.reason,
      remark: drop.remark,
    }));
}
