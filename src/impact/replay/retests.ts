import { CATALOGUE } from '../../conformance/catalogue/catalogue.ts';
import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { condemn, type Visit } from './replayed.ts';
import type { Session } from './session.ts';

/**
 * Leaves out the drops of a specimen that another one replaces, for the reason that the register gives: its code of the
 * catalogue is raised at the specimen's first drop. The drops stay in the log and in the history of the series, since
 * the operator acted on them.
 *
 * @returns takes the first drop of each specimen
 */
export function retestWatch({ specimens }: Session): (visit: Visit, list: DeviationList) => void {
  const replaced = new Map(
    (specimens ?? []).flatMap((row) => (row.replaces == null ? [] : [[row.replaces.specimen, row] as const])),
  );
  if (replaced.size === 0) return () => {};
  return (visit, list) => {
    const row = replaced.get(visit.tyre.name);
    if (row === undefined || visit.use === 'set-aside') return;
    const { reason, approver } = row.replaces!;
    const found = () =>
      `${quote(visit.tyre.name)} is replaced by ${quote(row.specimen)} for ${reason} (${CATALOGUE.get(reason)!.title}), approved by ${quote(approver, 24)}`;
    condemn(list, visit, reason, found, { effect: 'its drops are kept and left out of the estimate' });
  };
}
