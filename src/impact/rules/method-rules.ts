import type { ImpactProtocol, Rig, Step } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { InputError } from '../../problem/problem.ts';
import type { HistoryPlan } from './by-history.ts';
import { dOptimal } from './d-optimal.ts';
import { fixedLevel } from './fixed-level.ts';
import { langlie } from './langlie.ts';
import { type HeightLimits, type Levels, levelsFrom, narrower, sayer } from './levels.ts';
import { roughly } from './reckoning.ts';
import { risingHeight } from './rising-height.ts';
import type { MethodRule } from './rule.ts';
import type { MethodState, SeriesState } from './series-state.ts';
import type { Specimens } from './specimens.ts';
import { upAndDown } from './up-and-down.ts';

type SteppingBuilder = (protocol: ImpactProtocol, levels: Levels) => MethodRule<SeriesState>;
type ChoosingBuilder = (protocol: ImpactProtocol, plan: HistoryPlan) => MethodRule<MethodState>;

/** Every method that moves from level to level; a new one is one line here and one file beside. */
const STEPPING: Partial<Record<ImpactProtocol['method'], SteppingBuilder>> = {
  'up-and-down': (protocol, levels) => upAndDown({ levels, stop: protocol.stop, ...specimensOf(protocol) }),
  'transformed-up-and-down': (protocol, levels) =>
    upAndDown({
      levels,
      stop: protocol.stop,
      ...specimensOf(protocol),
      survivalsToRaise: needed(protocol, 'survivalsToRaise'),
    }),
  'rising-height': (protocol, levels) => risingHeight({ levels, stop: protocol.stop }),
};

/** Every method that sets a level of its own at each drop. */
const CHOOSING: Partial<Record<ImpactProtocol['method'], ChoosingBuilder>> = {
  'fixed-level': (protocol, { limits, resolution: _, ...plan }) =>
    fixedLevel({ ...plan, levels: reachedLevels(protocol, limits), perLevel: protocol.perLevel }),
  langlie: (protocol, plan) => langlie({ ...plan, limits: bothLimits(protocol, plan) }),
  'd-optimal': (protocol, plan) =>
    dOptimal({ ...plan, guess: needed(protocol, 'guess'), distribution: protocol.distribution }),
};

/** Hits (for sites that are hit again and again: sites) that one specimen may take; Infinity where unlimited. */
export function hitsAllowed(protocol: ImpactProtocol): number {
  return protocol.sites.perSpecimen ?? (protocol.method === 'rising-height' ? Infinity : 1);
}

/**
 * The levels that a protocol asks for on a rig: anchored at the start, within the narrower limits.
 *
 * @throws InputError for a protocol without start or step, and where the rig's limits leave out its start or all levels
 *   but one; its own limits are checked with the document
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
  const limits = levelLimits(protocol, rig);
  const levels = levelsFrom(start, step, limits, levelResolution(protocol, rig), protocol.vary);
  const say = levels.say;
  if (isBeyond(start, limits)) {
    const message = `found ${say(start)}, expected a start that rig ${quote(rig?.id ?? '')} reaches, ${rangeOf(limits, say)}; correct one of them`;
    throw unusable(protocol, 'start', 'beyond-limits', message);
  }
  const least = protocol.method === 'rising-height' ? 0 : levels.lowest;
  if (levels.highest <= least) {
    const message = `found a step that leaves what rig ${quote(rig?.id ?? '')} reaches, ${rangeOf(limits, say)}, from the start, ${say(start)}; expected a smaller step or another start`;
    throw unusable(protocol, 'step', 'step-beyond-limits', message);
  }
  return levels;
}

/**
 * The rule that a protocol's method follows. Its drops and its advice are levels: heights in mm, or masses in kg where
 * the protocol varies the mass.
 *
 * @throws InputError for a protocol that lacks what its method needs.
 */
export function ruleFor(protocol: ImpactProtocol, rig: Rig | null): MethodRule<MethodState> {
  const choosing = CHOOSING[protocol.method];
  return choosing === undefined
    ? steppingRuleFor(protocol, rig)
    : choosing(protocol, historyPlan(protocol, rig));
}

/** The same for thousands of simulated tests: a choice of levels is reckoned no finer than it matters. */
export function simulatedRuleFor(protocol: ImpactProtocol, rig: Rig | null): MethodRule<MethodState> {
  if (protocol.method !== 'd-optimal') return ruleFor(protocol, rig);
  const { distribution } = protocol;
  return dOptimal({ ...historyPlan(protocol, rig), guess: needed(protocol, 'guess'), distribution }, roughly);
}

/**
 * The same as ruleFor for a method that moves by one level.
 *
 * @throws InputError for another method.
 */
export function steppingRuleFor(protocol: ImpactProtocol, rig: Rig | null): MethodRule<SeriesState> {
  const build = STEPPING[protocol.method];
  if (build === undefined) {
    const message = `found method: ${protocol.method}, expected one of ${Object.keys(STEPPING).join(', ')}`;
    throw unusable(protocol, 'method', 'method-not-available', message);
  }
  return build(protocol, plannedLevels(protocol, rig));
}

/** Whether a method moves by one level, up or down, from the level before. */
export function isStepping(method: ImpactProtocol['method']): boolean {
  return STEPPING[method] !== undefined;
}

/** Most levels of the grid that stands for those which a rule chooses by itself. */
const FINEST = 512;

/**
 * Evenly spaced levels, rising, that stand for all which a rule of its own choice may set: those of the rig's resolution
 * where they are few enough, else 512 of them. Between the limits, or six guessed spreads about the guess. Null for a
 * method that chooses none.
 */
export function chosenLevels(protocol: ImpactProtocol, rig: Rig | null): number[] | null {
  if (protocol.method !== 'langlie' && protocol.method !== 'd-optimal') return null;
  const { min, max } = levelLimits(protocol, rig);
  const { guess } = protocol;
  const low = min ?? (guess === null ? null : Math.max(guess.lowest - 6 * guess.spread, guess.lowest / 4));
  const high = max ?? (guess === null ? null : guess.highest + 6 * guess.spread);
  if (low === null || high === null || !(low < high)) return null;
  const resolution = levelResolution(protocol, rig);
  const steps = resolution === null ? Infinity : (high - low) / resolution;
  const size = Number.isInteger(steps) && steps <= FINEST ? steps : FINEST;
  return Array.from({ length: size + 1 }, (_, i) => low + ((high - low) * i) / size);
}

/** The limits of what a protocol varies: of heights the narrower of the protocol's and the rig's, of masses its own. */
export function levelLimits(protocol: ImpactProtocol, rig: Rig | null): HeightLimits {
  return protocol.vary === 'mass' ? protocol.limits : narrower(protocol.limits, rig?.limits ?? NO_LIMITS);
}

/** mm to which a rig sets heights; masses are not rounded. */
export function levelResolution(protocol: ImpactProtocol, rig: Rig | null): number | null {
  return protocol.vary === 'mass' ? null : (rig?.resolution ?? null);
}

function historyPlan(protocol: ImpactProtocol, rig: Rig | null): HistoryPlan {
  return {
    limits: levelLimits(protocol, rig),
    resolution: levelResolution(protocol, rig),
    varied: protocol.vary,
    stop: protocol.stop,
    ...specimensOf(protocol),
  };
}

/** How often a method of single looks may hit one specimen. */
export function specimensOf(protocol: ImpactProtocol): Specimens {
  return {
    // Where one spot is hit again and again, the protocol counts spots, not hits.
    perSpecimen: protocol.sites.each === 'new-spot' ? hitsAllowed(protocol) : Infinity,
    goesOnAfterFailure: protocol.afterFailure === 'new-site',
  };
}

function bothLimits(protocol: ImpactProtocol, { limits }: HistoryPlan): { min: number; max: number } {
  const { min, max } = limits;
  if (min === null || max === null || !(min < max)) {
    const found = `found method: ${protocol.method} without limits on both sides, lowest below highest`;
    throw unusable(
      protocol,
      'method',
      'limits-missing',
      `${found}; add limits: { min: 100 mm, max: 1200 mm }`,
    );
  }
  return { min, max };
}

function needed<K extends 'levels' | 'guess' | 'survivalsToRaise'>(
  protocol: ImpactProtocol,
  key: K,
): NonNullable<ImpactProtocol[K]> {
  const value = protocol[key];
  if (value == null) {
    const message = `found method: ${protocol.method} without ${key}, which it needs; add it`;
    throw unusable(protocol, 'method', 'missing-key', message);
  }
  return value;
}

/** The protocol's levels, all of which the rig must reach. */
function reachedLevels(protocol: ImpactProtocol, limits: HeightLimits): readonly number[] {
  const levels = needed(protocol, 'levels');
  const say = sayer(protocol.vary);
  const beyond = levels.filter((level) => isBeyond(level, limits));
  if (beyond.length === 0) return levels;
  const message = `found ${beyond.map(say).join(', ')}, expected levels that the rig reaches, ${rangeOf(limits, say)}; correct one of them`;
  throw unusable(protocol, 'levels', 'beyond-limits', message);
}

function isBeyond(level: number, { min, max }: HeightLimits): boolean {
  return (min !== null && level < min) || (max !== null && level > max);
}

function rangeOf({ min, max }: HeightLimits, say: (level: number) => string): string {
  if (min === null) return `up to ${say(max!)}`;
  return max === null ? `from ${say(min)}` : `${say(min)} to ${say(max)}`;
}

/** A level's neighbour upwards: what "one step" means at a height. */
export function stepAt(height: number, step: Step): number {
  return step.kind === 'additive' ? step.size : height * step.ratio;
}

const NO_LIMITS = { min: null, max: null };

function unusable(protocol: ImpactProtocol, key: string, code: string, message: string): InputError {
  return new InputError([{ file: protocol.source.path, ...protocol.source.locate([key]), code, message }]);
}
