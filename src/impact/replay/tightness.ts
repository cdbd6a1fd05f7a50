import { damagesIn } from '../../conformance/damage.ts';
import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { counted, upTo } from '../../quantity/format.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { PRESSURE_LIMIT, pressureTolerance } from './conditions.ts';
import { raiseAt, type Visit } from './replayed.ts';

/**
 * Holds the pressure after a hit against the outcome: the gauge is a second reader. A survival with a loss beyond the
 * protocol's (else beyond twice the tolerance of the pressure), or a failure without a loss or a damage where the
 * protocol names one, is DROP-45.
 */
export function checkTightness(
  visit: Visit,
  { leakCheck = null }: ImpactProtocol,
  planned: Quantity | null,
  list: DeviationList,
): void {
  const { pressure, details, outcome, damage } = visit.drop;
  const after = details?.pressureAfter ?? null;
  // What was amended since was settled by it.
  if (pressure === null || after === null || visit.acted !== outcome) return;
  const stated = leakCheck?.loss ?? null;
  const most = stated ?? PRESSURE_LIMIT * pressureTolerance(planned);
  const hasLost = pressure - after > most + 1e-9;
  const noted = damage === null ? [] : damagesIn(damage);
  const readings = `${upTo(pressure, 3)} bar before the hit and ${upTo(after, 3)} bar after it`;
  if (outcome === 'survived' && hasLost && !noted.some(({ meaning }) => meaning === 'bead')) {
    raiseAt(
      list,
      visit,
      'DROP-45',
      () => `survived, and ${readings}, expected a loss of at most ${upTo(most, 3)} bar`,
    );
  }
  if (outcome === 'failed' && !hasLost && stated !== null && noted.length === 0) {
    raiseAt(
      list,
      visit,
      'DROP-45',
      () => `failed without a damage, and ${readings}, expected a loss above ${upTo(most, 3)} bar`,
    );
  }
}

/** A sentence on survivals whose tightness is not shown, where the protocol asks for a leak check. */
export function leakCheckNotes(visits: readonly Visit[], { leakCheck = null }: ImpactProtocol): string[] {
  if (leakCheck === null || leakCheck.method === null) return [];
  const survived = visits.filter(({ drop, use }) => use !== 'set-aside' && drop.outcome === 'survived');
  const missing = survived.filter(({ drop }) => (drop.details?.leakCheck ?? null) === null).length;
  if (missing === 0) return [];
  const where =
    missing === survived.length ? 'any survival' : `${missing} of ${counted(survived.length, 'survival')}`;
  return [
    `The leak check that the protocol asks for is not noted for ${where}: that the tyres were tight is not shown.`,
  ];
}
