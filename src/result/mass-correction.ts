/** Drops of one log whose energy goes by another falling mass than the one stated for their rig, within 1 % of it. */
export interface MassCorrection {
  /** `id@config`; null where the run names no rig. */
  readonly rig: string | null;
  /** Who gave the mass that is used: the rig's file, by a proof, or the log, drop by drop. */
  readonly from: 'rig' | 'log';
  /** kg. */
  readonly stated: number;
  /** kg: one value, or the ends of a range. */
  readonly used: { readonly least: number; readonly most: number };
  readonly drops: number;
  readonly file: string;
  readonly firstLine: number;
  readonly lastLine: number;
  /** What shows it, and when it was found; null for a mass of the log. */
  readonly by: string | null;
  readonly on: string | null;
}
