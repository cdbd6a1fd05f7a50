/** Standard atmosphere, bar (ISO 2533). */
export const ATMOSPHERE = 1.01325;
const ICE = 273.15;

/**
 * Gauge pressure of the same air in the same room at another temperature, by the law of ideal gases on absolute pressure:
 * (p + p₀)·T₂/T₁ − p₀. A tyre that gives changes its room a little: a reading to compare by, no measured value.
 *
 * @param gauge bar above the air around
 * @param from °C at which it was read
 * @param to °C
 * @throws RangeError for a temperature at or below absolute zero, or an absolute pressure below nought
 */
export function gaugePressureAt(gauge: number, from: number, to: number): number {
  if (!(from > -ICE && to > -ICE && gauge >= -ATMOSPHERE)) {
    throw new RangeError(`no gas of ${gauge} bar is at ${from} °C and ${to} °C`);
  }
  return ((gauge + ATMOSPHERE) * (to + ICE)) / (from + ICE) - ATMOSPHERE;
}
