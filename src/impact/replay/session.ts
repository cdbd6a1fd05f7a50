import type { Construction, ImpactProtocol, Rig } from '../../documents/kinds.ts';
import type { RigCheck } from '../../logs/checks.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Mounting } from '../../logs/mountings.ts';
import type { Specimen } from '../../logs/register.ts';
import type { EnergyScale } from '../../rig/energy.ts';
import type { Group } from './groups.ts';
import type { Mountings } from './mounting.ts';
import type { Visit } from './replayed.ts';
import type { Tyre } from './tyre.ts';

export interface ReplayInput {
  readonly protocol: ImpactProtocol;
  readonly rig: Rig | null;
  /** All drops of the test, in the order in which they were made. */
  readonly drops: readonly Drop[];
  /** Quantities that the logs have a column for. */
  readonly columns: ReadonlySet<string>;
  /** Null where the run names no table of specimens. */
  readonly specimens: readonly Specimen[] | null;
  readonly constructions: readonly Construction[];
  readonly scale: EnergyScale;
  /** Where reading found that the rig's computer had stopped while it wrote. */
  readonly unsaved?: readonly Unsaved[];
  readonly mountings?: readonly Mounting[];
  /** Null where the run names no table of rig checks. */
  readonly checks?: readonly RigCheck[] | null;
  /** The rig that a drop was made on, where several make one test; `rig` for all, if not given. */
  readonly rigOf?: (drop: Drop) => Rig | null;
  /** Criteria of the specification that rest on another version of the protocol. */
  readonly pinned?: readonly Pinned[];
  /** What the operator saw and acted on, for drops whose outcome was amended later. */
  readonly acted?: ReadonlyMap<Drop, Drop['outcome']>;
}

export interface Pinned {
  readonly file: string;
  readonly line: number;
  readonly criterion: string;
  readonly version: string;
}

export interface Unsaved {
  readonly file: string;
  readonly line: number | null;
  readonly message: string;
}

/** A test with its drops on their way through the checks. */
export interface Session extends Omit<ReplayInput, 'mountings'> {
  readonly visits: readonly Visit[];
  readonly tyres: readonly Tyre[];
  readonly groups: readonly Group[];
  readonly mountings: Mountings;
}
