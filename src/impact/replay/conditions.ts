import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Construction, ImpactProtocol } from '../../documents/kinds.ts';
import { counted, height, upTo } from '../../quantity/format.ts';
import { band, type Quantity } from '../../quantity/quantity.ts';
import type { StatedMass } from '../../rig/mass.ts';
import { raiseAt, type Visit } from './replayed.ts';

/** Where the protocol states no tolerance. Common practice, no source. */
const PRESSURE_TOLERANCE = 0.05;
const TEMPERATURE_TOLERANCE = 2;
/** K beyond which a drop cannot count, and the multiple of the pressure tolerance that does the same. */
const TEMPERATURE_LIMIT = 5;
export const PRESSURE_LIMIT = 2;

/** A value on its limit must not fall off it by the last bit of a subtraction. */
const SLACK = 1e-9;

/** Raises DROP-11 where the logged mass is not the stated one. */
export function checkMass(visit: Visit, stated: StatedMass | null, list: DeviationList): void {
  const { mass } = visit.drop;
  if (mass === null || stated === null) return;
  if (Math.abs(mass - stated.value) <= stated.tolerance + SLACK) return;
  raiseAt(
    list,
    visit,
    'DROP-11',
    () =>
      `mass ${upTo(mass, 4)} kg in the log, ${upTo(stated.value, 4)} kg in the ${stated.from} ` +
      `(± ${upTo(stated.tolerance, 4)} kg)`,
  );
}

/** Raises DROP-01 for a drop that was not made from the one height of a protocol that varies the mass. */
export function checkFixedHeight(
  visit: Visit,
  { vary, height: planned, heightTolerance }: ImpactProtocol,
  list: DeviationList,
): void {
  if (vary === 'height' || planned === null) return;
  const set = visit.drop.height;
  if (Math.abs(set - planned) <= heightTolerance + SLACK) return;
  const found = () =>
    `height ${height(set)}, all drops planned from ${height(planned)} ± ${height(heightTolerance)}`;
  raiseAt(list, visit, 'DROP-01', found);
}

/** Raises DROP-21 for a pressure out of its band: it weighs more beyond twice the tolerance. */
export function checkPressure(visit: Visit, planned: Quantity | null, list: DeviationList): void {
  const { pressure } = visit.drop;
  if (pressure === null || planned === null) return;
  const tolerance = pressureTolerance(planned);
  const off = Math.abs(pressure - planned.value);
  if (off <= tolerance + SLACK) return;
  const found = () =>
    `pressure ${upTo(pressure, 3)} bar, planned ${upTo(planned.value, 3)} bar ± ${upTo(tolerance, 3)} bar`;
  raiseAt(list, visit, 'DROP-21', found, off > PRESSURE_LIMIT * tolerance + SLACK ? FAR_PRESSURE : {});
}

/** Raises DROP-25 for a temperature out of its band: it weighs more beyond 5 K. */
export function checkTemperature(visit: Visit, planned: Quantity | null, list: DeviationList): void {
  const { temperature } = visit.drop;
  if (temperature === null || planned === null) return;
  const tolerance = halfWidth(planned, TEMPERATURE_TOLERANCE);
  const off = Math.abs(temperature - planned.value);
  if (off <= tolerance + SLACK) return;
  const found = () =>
    `temperature ${upTo(temperature, 1)} °C, planned ${upTo(planned.value, 1)} °C ± ${upTo(tolerance, 1)} K`;
  raiseAt(list, visit, 'DROP-25', found, off > TEMPERATURE_LIMIT + SLACK ? FAR_TEMPERATURE : {});
}

const FAR_PRESSURE = {
  severity: 'invalidating',
  effect: 'that is beyond twice the tolerance, and the drop is left out of the estimate',
} as const;
const FAR_TEMPERATURE = {
  severity: 'invalidating',
  effect: `that is more than ${TEMPERATURE_LIMIT} K off, and the drop is left out of the estimate`,
} as const;

/** The pressure that a construction is to be tested at; null where the protocol does not settle it. */
export function plannedPressure(
  protocol: ImpactProtocol,
  construction: Construction | null,
): Quantity | null {
  const { pressure } = protocol;
  if (pressure === null || isQuantity(pressure)) return pressure;
  return construction?.size == null ? null : (pressure[construction.size] ?? null);
}

/** A note for each planned condition that the log does not show to have been kept: missing is not equal. */
export function unrecorded(protocol: ImpactProtocol, visits: readonly Visit[], unsettled: number): string[] {
  const notes: string[] = [];
  for (const [name, quantity] of [
    ['pressure', protocol.pressure],
    ['temperature', protocol.temperature],
  ] as const) {
    const missing = visits.reduce((count, { drop }) => count + (drop[name] === null ? 1 : 0), 0);
    if (quantity === null || missing === 0) continue;
    const where = missing === visits.length ? 'any drop' : `${missing} of ${counted(visits.length, 'drop')}`;
    notes.push(`The ${name} is not recorded for ${where}: it is not shown to have been kept.`);
  }
  if (unsettled > 0) {
    notes.push(
      `The pressure is planned by tyre size, and the size of the specimens of ${counted(unsettled, 'drop')} is not ` +
        'known or not planned for: their pressure was not checked.',
    );
  }
  return notes;
}

function isQuantity(pressure: NonNullable<ImpactProtocol['pressure']>): pressure is Quantity {
  return typeof pressure.value === 'number';
}

/** bar either way that a pressure may be off: the protocol's, else the usual. */
export function pressureTolerance(planned: Quantity | null): number {
  return planned === null ? PRESSURE_TOLERANCE : halfWidth(planned, PRESSURE_TOLERANCE);
}

function halfWidth(planned: Quantity, fallback: number): number {
  const limits = band(planned);
  return limits === null ? fallback : limits.upper - planned.value;
}
