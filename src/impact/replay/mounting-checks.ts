import { damagesIn } from '../../conformance/damage.ts';
import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Mounting } from '../../logs/mountings.ts';
import { quote } from '../../problem/echo.ts';
import { upTo } from '../../quantity/format.ts';
import { rimKind } from './mounting.ts';
import { condemn, raiseAt, type Visit } from './replayed.ts';
import type { Session } from './session.ts';

/** mm by which the diameters of two tyres may differ on one height zero. Common practice, no source. */
const SAME_DIAMETER = 2;
/** ml; what a syringe can meter. Common practice, no source. */
const SAME_VOLUME = 1;

/** What every mounting of a test should be: as the protocol says, else as most tyres were mounted. */
interface Usual {
  readonly rim: string | null;
  readonly tubeMaterial: string | null;
  readonly tubeBatch: string | null;
  readonly sealant: number | null;
  readonly insert: string | null;
  readonly from: string;
}

/**
 * Watches what the tyres were mounted on and with: rim (DROP-36, DROP-37), tube (DROP-35, DROP-38), sealant (DROP-39),
 * insert (DROP-40), height zero (DROP-18). What nobody noted is not told of.
 *
 * @returns takes the drops in their order; true where a drop was made on a failed tyre that was mended for it.
 */
export function checkMounting(session: Session): (visit: Visit, list: DeviationList) => boolean {
  const { mountings, visits, protocol } = session;
  const hasDents = visits.some(({ drop }) => drop.damage?.includes('rim') === true);
  const first = firstMountings(session);
  if (first.length === 0) return hasDents ? dentWatch(() => null) : () => false;
  const usual = usualOf(first, session);
  const zeros = first.some(({ zeroSet }) => zeroSet !== null);
  const dented = dentWatch((visit) => mountings.of(visit)?.rim ?? null);
  const last = new Map<Visit['tyre'], Mounting>();
  let before: Visit | null = null;

  return (visit, list) => {
    const mounting = mountings.of(visit);
    const previous = last.get(visit.tyre);
    dented(visit, list);
    if (mounting === null) return false;
    let wasPatched = false;
    if (previous === undefined || previous !== mounting) {
      last.set(visit.tyre, mounting);
      checkAgainst(usual, mounting, visit, list);
      if (previous !== undefined) wasPatched = checkChange(previous, mounting, visit, list);
    }
    if (zeros && previous === undefined) checkZero(mounting, visit, list);
    before = visit;
    return wasPatched;
  };

  function checkZero(mounting: Mounting, visit: Visit, list: DeviationList): void {
    const diameters = [before, visit].map((it) => it?.tyre.row?.measured.diameter ?? null);
    const [one, other] = diameters;
    if (mounting.zeroSet === true || one == null || other == null) return;
    if (Math.abs(one - other) <= SAME_DIAMETER) return;
    const found = () =>
      `${quote(visit.tyre.name)} is ${upTo(other, 1)} mm across, the tyre before ${upTo(one, 1)} mm, and the height was not set to nought between them`;
    raiseAt(list, visit, 'DROP-18', found);
  }

  /** Whether the failed tyre was mended. */
  function checkChange(was: Mounting, is: Mounting, visit: Visit, list: DeviationList): boolean {
    const { tyre } = visit;
    if (was.rim !== null && is.rim !== null && was.rim !== is.rim && rimKind(was) === rimKind(is)) {
      const found = () =>
        `${quote(tyre.name)} on rim ${quote(is.rim!, 24)}, until then on ${quote(was.rim!, 24)}`;
      raiseAt(list, visit, 'DROP-36', found);
    }
    if (tyre.failedLine === null || was.tube === null || is.tube === null || was.tube === is.tube)
      return false;
    const line = tyre.failedLine;
    const found = () =>
      `${quote(tyre.name)} failed on line ${line}, was given tube ${quote(is.tube!, 24)} and hit again`;
    if (protocol.afterFailure === 'new-site') raiseAt(list, visit, 'DROP-35', found, ALLOWED);
    else raiseAt(list, visit, 'DROP-35', found, { effect: 'its drops after the failure are ignored' });
    return true;
  }
}

const ALLOWED = {
  severity: 'minor',
  effect: 'the protocol goes on at a new site; the casing was damaged before',
} as const;

function checkAgainst(usual: Usual, mounting: Mounting, visit: Visit, list: DeviationList): void {
  const name = quote(visit.tyre.name);
  const rim = rimKind(mounting);
  if (usual.rim !== null && rim !== null && rim !== usual.rim) {
    const found = () => `${name} on a rim of ${rim}, ${usual.from} ${usual.rim}`;
    raiseAtComparison(list, visit, found);
  }
  const { tubeMaterial, tubeBatch, sealant, insert } = mounting;
  if (usual.tubeMaterial !== null && tubeMaterial !== null && tubeMaterial !== usual.tubeMaterial) {
    const found = () =>
      `${name} with a tube of ${quote(tubeMaterial, 24)}, ${usual.from} ${quote(usual.tubeMaterial!, 24)}`;
    condemn(list, visit, 'DROP-38', found, {
      effect: 'another material is another test: its drops are left out',
    });
  } else if (usual.tubeBatch !== null && tubeBatch !== null && tubeBatch !== usual.tubeBatch) {
    const found = () =>
      `${name} with a tube of batch ${quote(tubeBatch, 24)}, ${usual.from} ${quote(usual.tubeBatch!, 24)}`;
    raiseAt(list, visit, 'DROP-38', found);
  }
  if (usual.sealant !== null && sealant !== null && Math.abs(sealant - usual.sealant) > SAME_VOLUME) {
    const found = () =>
      `${name} with ${upTo(sealant, 1)} ml of sealant, ${usual.from} ${upTo(usual.sealant!, 1)} ml`;
    condemn(list, visit, 'DROP-39', found);
  }
  if (usual.insert !== null && insert !== null && insert !== usual.insert) {
    const found = () => `${name} with insert ${quote(insert, 24)}, ${usual.from} ${quote(usual.insert!, 24)}`;
    condemn(list, visit, 'DROP-40', found);
  }
}

/** A comparison over two kinds of rim is not allowed; each kind is a sample of its own, so the drop stays in it. */
function raiseAtComparison(list: DeviationList, visit: Visit, found: () => string): void {
  const { drop } = visit;
  const place = {
    file: drop.file,
    line: drop.line,
    specimen: drop.specimen,
    drop: drop.number ?? visit.place,
  };
  list.add({ code: 'DROP-37', found, ...place });
}

function firstMountings({ tyres, mountings, visits }: Session): Mounting[] {
  if (mountings.all.length === 0 && tyres.every(({ row }) => row === null)) return [];
  const found: Mounting[] = [];
  let met = -1;
  for (const visit of visits) {
    if (visit.tyre.index <= met) continue;
    met = visit.tyre.index;
    const mounting = visit.use === 'set-aside' ? null : mountings.of(visit);
    if (mounting !== null) found.push(mounting);
  }
  return found;
}

function usualOf(first: readonly Mounting[], { protocol }: Session): Usual {
  const plan = protocol.mounting ?? null;
  const most = <Value>(of: (mounting: Mounting) => Value | null) => mostCommon(first.map(of));
  const rim =
    plan === null
      ? null
      : rimKind({ ...first[0]!, rimWidth: plan.rimWidth ?? null, rimType: plan.rimType ?? null });
  return {
    rim: rim ?? most(rimKind),
    tubeMaterial: plan?.tube ?? most((mounting) => mounting.tubeMaterial),
    tubeBatch: most((mounting) => mounting.tubeBatch),
    sealant: plan?.sealant ?? most((mounting) => mounting.sealant),
    insert: plan?.insert ?? most((mounting) => mounting.insert),
    from: plan === null ? 'most of the others' : 'planned',
  };
}

/** Of equally common values the one met first. */
function mostCommon<Value>(values: readonly (Value | null)[]): Value | null {
  const counts = new Map<Value, number>();
  for (const value of values) if (value !== null) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: Value | null = null;
  for (const [value, count] of counts) if (best === null || count > counts.get(best)!) best = value;
  return best;
}

/** Raises DROP-36 at the first drop that meets a rim which an earlier hit has dented or cracked. */
function dentWatch(rimOf: (visit: Visit) => string | null) {
  const dents = new Map<string | null, number>();
  return (visit: Visit, list: DeviationList): false => {
    const rim = rimOf(visit);
    const line = dents.get(rim);
    if (line !== undefined) {
      dents.delete(rim);
      const which = rim === null ? 'the rim' : `rim ${quote(rim, 24)}`;
      raiseAt(list, visit, 'DROP-36', () => `hit on ${which}, which the drop of line ${line} had damaged`);
    }
    const { damage, line: here } = visit.drop;
    if (damage !== null && damagesIn(damage).some(({ meaning }) => meaning === 'rim')) dents.set(rim, here);
    return false;
  };
}
