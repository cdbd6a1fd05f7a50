/** A physical dimension that protocols, rigs and logs speak of. */
export type Dimension =
  | 'length'
  | 'mass'
  | 'pressure'
  | 'temperature'
  | 'temperature difference'
  | 'energy'
  | 'speed'
  | 'acceleration'
  | 'force'
  | 'torque'
  | 'angle'
  | 'time'
  | 'frequency'
  | 'area'
  | 'volume'
  | 'power'
  | 'wear rate'
  | 'ratio';

interface Unit {
  readonly dimension: Dimension;
  /** Value in SI base units = value in this unit × factor + offset. */
  readonly factor: number;
  readonly offset?: number;
}

const INCH = 0.0254;
const POUND = 0.45359237;
const STANDARD_GRAVITY = 9.80665;

const unit = (dimension: Dimension, factor: number, offset?: number): Unit =>
  offset === undefined ? { dimension, factor } : { dimension, factor, offset };

/**
 * Units by every spelling that is accepted. Factors are exact by definition (SI Brochure; NIST SP 811, appendix B),
 * except that psi, kgf and lbf follow from the exact pound, inch and standard gravity.
 */
const UNITS: ReadonlyMap<string, Unit> = new Map(
  Object.entries({
    m: unit('length', 1),
    mm: unit('length', 1e-3),
    cm: unit('length', 1e-2),
    µm: unit('length', 1e-6),
    um: unit('length', 1e-6),
    km: unit('length', 1e3),
    in: unit('length', INCH),
    inch: unit('length', INCH),
    ft: unit('length', 12 * INCH),
    mi: unit('length', 1609.344),
    kg: unit('mass', 1),
    g: unit('mass', 1e-3),
    lb: unit('mass', POUND),
    bar: unit('pressure', 1e5),
    mbar: unit('pressure', 1e2),
    Pa: unit('pressure', 1),
    hPa: unit('pressure', 1e2),
    kPa: unit('pressure', 1e3),
    MPa: unit('pressure', 1e6),
    psi: unit('pressure', (POUND * STANDARD_GRAVITY) / (INCH * INCH)),
    'kgf/cm2': unit('pressure', STANDARD_GRAVITY * 1e4),
    'kgf/cm²': unit('pressure', STANDARD_GRAVITY * 1e4),
    '°C': unit('temperature', 1, 273.15),
    degC: unit('temperature', 1, 273.15),
    '°F': unit('temperature', 5 / 9, 273.15 - (32 * 5) / 9),
    degF: unit('temperature', 5 / 9, 273.15 - (32 * 5) / 9),
    K: unit('temperature difference', 1),
    J: unit('energy', 1),
    ft·lbf: unit('energy', 12 * INCH * POUND * STANDARD_GRAVITY),
    'ft-lbf': unit('energy', 12 * INCH * POUND * STANDARD_GRAVITY),
    kJ: unit('energy', 1e3),
    'm/s': unit('speed', 1),
    'mm/s': unit('speed', 1e-3),
    'km/h': unit('speed', 1 / 3.6),
    mph: unit('speed', 0.44704),
    'm/s2': unit('acceleration', 1),
    'm/s²': unit('acceleration', 1),
    N: unit('force', 1),
    kN: unit('force', 1e3),
    kgf: unit('force', STANDARD_GRAVITY),
    lbf: unit('force', POUND * STANDARD_GRAVITY),
    Nm: unit('torque', 1),
    N·m: unit('torque', 1),
    deg: unit('angle', Math.PI / 180),
    '°': unit('angle', Math.PI / 180),
    rad: unit('angle', 1),
    s: unit('time', 1),
    ms: unit('time', 1e-3),
    µs: unit('time', 1e-6),
    us: unit('time', 1e-6),
    min: unit('time', 60),
    h: unit('time', 3600),
    d: unit('time', 86400),
    Hz: unit('frequency', 1),
    kHz: unit('frequency', 1e3),
    '1/min': unit('frequency', 1 / 60),
    rpm: unit('frequency', 1 / 60),
    cm2: unit('area', 1e-4),
    mm2: unit('area', 1e-6),
    ml: unit('volume', 1e-6),
    l: unit('volume', 1e-3),
    W: unit('power', 1),
    'mm/1000km': unit('wear rate', 1e-9),
    'mm/1000 km': unit('wear rate', 1e-9),
    'mm/km': unit('wear rate', 1e-6),
    '%': unit('ratio', 1e-2),
    '1': unit('ratio', 1),
  }),
);

/** Every accepted spelling of a unit, for messages and completion. */
export function unitNames(dimension?: Dimension): string[] {
  return [...UNITS].filter(([, known]) => !dimension || known.dimension === dimension).map(([name]) => name);
}

/** The dimension of a unit, or null where the spelling is unknown. The Greek mu is read as the micro sign. */
export function dimensionOf(name: string): Dimension | null {
  return UNITS.get(name.replaceAll('μ', 'µ'))?.dimension ?? null;
}

/** Whether a value in one unit can be said in the other. */
export function sameDimension(from: string, to: string): boolean {
  const dimension = dimensionOf(from);
  return dimension !== null && dimension === dimensionOf(to);
}

/**
 * A value in another unit of the same dimension. Where the ratio of the units is a whole number or the inverse of
 * one, the result is the correctly rounded one (25 mm stays 25, 0.9 m is 900 mm exactly).
 *
 * @throws RangeError for a unit that is not known, or for units of two dimensions: callers check first.
 */
export function convert(value: number, from: string, to: string): number {
  if (from === to) return value;
  const source = UNITS.get(from.replaceAll('μ', 'µ'));
  const target = UNITS.get(to.replaceAll('μ', 'µ'));
  if (!source || !target || source.dimension !== target.dimension) {
    throw new RangeError(`cannot convert ${value} ${from} to ${to}`);
  }
  if (source.offset !== undefined || target.offset !== undefined) {
    return (value * source.factor + (source.offset ?? 0) - (target.offset ?? 0)) / target.factor;
  }
  const up = source.factor / target.factor;
  const down = target.factor / source.factor;
  if (isNearlyWhole(up)) return roundedProduct(value, Math.round(up));
  if (isNearlyWhole(down)) return value / Math.round(down);
  return roundedProduct(value, up);
}

function isNearlyWhole(ratio: number): boolean {
  return ratio >= 0.5 && ratio < 1e12 && Math.abs(ratio - Math.round(ratio)) < 1e-9 * ratio;
}

/** 0.29 m is 290 mm, not 290.00000000000006, and 19 in are 482.6 mm: decimal digits are what was measured. */
function roundedProduct(value: number, ratio: number): number {
  const product = value * ratio;
  return Number.isFinite(product) ? Number(product.toPrecision(15)) : product;
}
