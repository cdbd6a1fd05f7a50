import type { ImpactProtocol, Rig } from '../documents/kinds.ts';

/** m/s², by definition (3rd CGPM, 1901; ISO 80000-3). */
export const STANDARD_GRAVITY = 9.80665;

/** Acceleration of free fall, and where the value comes from. */
export interface Gravity {
  /** m/s². */
  readonly value: number;
  readonly from: 'rig' | 'rig site' | 'protocol' | 'standard';
}

/** GRS 80: equatorial normal gravity in m/s², Somigliana's constant, first eccentricity squared. */
const GRS80 = { equator: 9.7803267715, k: 0.001931851353, e2: 0.0066943800229 } as const;

/** Free-air gradient, 1/s²: its curvature is below 1e-6 m/s² up to 500 m. */
const FREE_AIR = 3.086e-6;

/**
 * Normal gravity in m/s² at a geographic latitude (degrees, either sign) and an altitude (metres):
 * γ = γe (1 + k sin²φ) / √(1 − e² sin²φ) − 3.086e-6 s⁻² · altitude.
 *
 * A model: the real value may differ by about 1e-3 m/s² (from memory), which is 0.01 % of an energy.
 *
 * Source: Moritz, Geodetic Reference System 1980 (Somigliana's closed formula); free-air term as in
 * tests/reference/gravity.json.
 */
export function normalGravity(latitude: number, altitude: number): number {
  const sin2 = Math.sin((latitude * Math.PI) / 180) ** 2;
  return (GRS80.equator * (1 + GRS80.k * sin2)) / Math.sqrt(1 - GRS80.e2 * sin2) - FREE_AIR * altitude;
}

/**
 * The gravity that a test counts with: the rig's own value, else that of its site, else the protocol's, else
 * standard gravity. The caller says which it was.
 */
export function localGravity(rig: Rig | null, protocol: ImpactProtocol): Gravity {
  const own = gravityOfRig(rig);
  if (own.from !== 'standard') return own;
  if (protocol.gravity) return { value: protocol.gravity.value, from: 'protocol' };
  return own;
}

/** The gravity of a rig alone: its own value, else that of its site, else standard gravity. */
export function gravityOfRig(rig: Rig | null): Gravity {
  if (rig?.gravity) return { value: rig.gravity.value, from: 'rig' };
  if (rig?.site) return { value: normalGravity(rig.site.latitude, rig.site.altitude), from: 'rig site' };
  return { value: STANDARD_GRAVITY, from: 'standard' };
}
