import type { ImpactProtocol, Rig, Step } from '../../documents/kinds.ts';
import { InputError } from '../../problem/problem.ts';
import { type Levels, levelsFrom, narrower } from './levels.ts';
import { risingHeight } from './rising-height.ts';
import type { MethodRule } from './rule.ts';
import type { SeriesState } from './series-state.ts';
import { upAndDown } from './up-and-down.ts';

type RuleBuilder = (protocol: ImpactProtocol, levels: Levels) => MethodRule<SeriesState>;

/** Every method that moves from level to level; a new one is one line here and one file beside. */
const BUILDERS: Partial<Record<ImpactProtocol['method'], RuleBuilder>> = {
  'up-and-down': (protocol, levels) =>
    upAndDown({
      levels,
      stop: protocol.stop,
      // Where one spot is hit again and again, the protocol counts spots, not hits.
      perSpecimen: protocol.sites.each === 'new-spot' ? hitsAllowed(protocol) : Infinity,
      goesOnAfterFailure: protocol.afterFailure === 'new-site',
    }),
  'rising-height': (protocol, levels) => risingHeight({ levels, stop: protocol.stop }),
};

/** Hits (for sites that are hit again and again: sites) that one specimen may take; Infinity where unlimited. */
export function hitsAllowed(protocol: ImpactProtocol): number {
  return protocol.sites.perSpecimen ?? (protocol.method === 'rising-height' ? Infinity : 1);
}

/**
 * The levels that a protocol asks for on a rig: anchored at the start, within the narrower limits.
 *
 * @throws InputError for a protocol without start or step.
 */
export function plannedLevels(protocol: ImpactProtocol, rig: Rig | null): Levels {
  const { start, step } = protocol;
  if (start === null || step === null) {
    throw unusable(
      protocol,
      'method',
      'start-or-step-missing',
      `found method: ${protocol.method} without start or step`,
    );
  }
  return levelsFrom(
    start,
    step,
    narrower(protocol.limits, rig?.limits ?? NO_LIMITS),
    rig?.resolution ?? null,
  );
}

/**
 * The rule that a protocol's method follows.
 *
 * @throws InputError for a method that cannot be replayed yet.
 */
export function ruleFor(protocol: ImpactProtocol, rig: Rig | null): MethodRule<SeriesState> {
  const build = BUILDERS[protocol.method];
  if (build === undefined) {
    const message = `found method: ${protocol.method}, expected one of ${Object.keys(BUILDERS).join(', ')}`;
    throw unusable(protocol, 'method', 'method-not-available', message);
  }
  return build(protocol, plannedLevels(protocol, rig));
}

/** A level's neighbour upwards, in mm: what "one step" means at a height. */
export function stepAt(height: number, step: Step): number {
  return step.kind === 'additive' ? step.size : height * step.ratio;
}

const NO_LIMITS = { min: null, max: null };

function unusable(protocol: ImpactProtocol, key: string, code: string, message: string): InputError {
  return new InputError([{ file: protocol.source.path, ...protocol.source.locate([key]), code, message }]);
}
