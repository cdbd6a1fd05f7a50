import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { instantOf } from '../../logs/instant.ts';
import { registerCell } from '../../logs/register.ts';
import { offsetOf, spanOf } from '../../logs/span.ts';
import { quote } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import { condemn, raiseAt, type Visit } from './replayed.ts';

const HOUR = 3_600_000;
/** Hours. ISO 23529 as ISO 37 restates it: at least 3 h of conditioning, at least 16 h after vulcanisation. */
const CONDITIONING = 3;
const AGE = 16;
const VIRGIN: ReadonlySet<string> = new Set(['', 'virgin', 'new', 'none', '-']);

/**
 * What a specimen's row says of it before its first hit: used before (DROP-33), too young after cure (DROP-27), too
 * short in the conditioning room (DROP-26). Only what the dates show for certain is raised: a cure on a day is taken
 * at its beginning, and what is not written down is not told.
 */
export function checkPreparation(visit: Visit, protocol: ImpactProtocol, list: DeviationList): void {
  const { row } = visit.tyre;
  if (row === null) return;
  const history = registerCell(row, 'history')?.toLowerCase() ?? '';
  if (!VIRGIN.has(history)) {
    const found = () =>
      `${quote(visit.tyre.name)} was used before (${quote(history)}, register line ${row.line})`;
    condemn(list, visit, 'DROP-33', found, { effect: USED });
  }
  const { time } = visit.drop;
  const hit = time === null ? null : instantOf(time);
  const offset = time === null ? 'Z' : offsetOf(time);
  const moment = (name: string) => {
    const text = registerCell(row, name);
    return text === null || text === '' ? null : spanOf(text, offset);
  };
  const cured = moment('cured');
  const age = protocol.preparation?.age ?? AGE;
  if (cured !== null && hit !== null && hit - cured.from < age * HOUR) {
    const hours = Math.max(0, (hit - cured.from) / HOUR);
    const found = () =>
      `${quote(visit.tyre.name)} hit at most ${upTo(hours, 1)} h after its cure, expected at least ${upTo(age, 1)} h`;
    condemn(list, visit, 'DROP-27', found);
  }
  const from = moment('conditioned from');
  const to = moment('conditioned to') ?? (hit === null ? null : { from: hit, to: hit });
  if (from === null || to === null) return;
  const end = hit === null ? to.to : Math.min(to.to, hit);
  const least = protocol.preparation?.conditioning ?? CONDITIONING;
  if (end - from.from >= least * HOUR) return;
  const found = () =>
    `${quote(visit.tyre.name)} conditioned for ${upTo(Math.max(0, end - from.from) / HOUR, 2)} h, expected at least ${upTo(least, 2)} h`;
  raiseAt(list, visit, 'DROP-26', found);
}

const USED = 'a tyre that was loaded before is another specimen, and its drops are left out of the estimate';
