import type { ImpactProtocol, Rig, Stop } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import type { Experiment } from '../../statistics/calibration/experiment.ts';
import type { TabulatedTest } from '../../statistics/calibration/tabulated-criticals.ts';
import { laws } from '../../statistics/laws/laws.ts';
import { type Observation, toScale } from '../../statistics/likelihood/observation.ts';
import type { Measure, Observations } from '../observations.ts';
import type { ReplayedSample } from '../replay/replay.ts';
import type { ReplayedDrop } from '../replay/replayed.ts';
import type { SeriesOutcome } from '../replay/series.ts';
import { nearestOf } from '../rules/fixed-level.ts';
import type { Levels } from '../rules/levels.ts';
import { chosenLevels, simulatedRuleFor } from '../rules/method-rules.ts';
import {
  chosenExperiment,
  type ExperimentBase,
  fixedExperiment,
  resolutionOf,
  risingExperiment,
  steppedExperiment,
} from './experiments.ts';
import { dropsAtMost, type FixedHit, type SteppedSeries } from './walks.ts';

/** A test as simulation repeats it. */
export interface RepeatableTest {
  readonly kind: 'repeatable';
  readonly experiment: Experiment;
  /** The same for the table of critical values, where the test is one that it has. */
  readonly tabulated: TabulatedTest | null;
  /** What was taken for granted; null as a rule. */
  readonly remark: string | null;
}

/** A test that can be repeated in simulation, or why not. */
export type Repeatable = RepeatableTest | { readonly kind: 'not-repeatable'; readonly why: string };

/**
 * Share of the variance of strength that is taken to lie between tyres where several sites of one are hit. It cannot be
 * told from few tyres: seven tenths keeps intervals honest at one half (calibration.md of src/statistics).
 */
export const ASSUMED_SHARE = 0.7;

const PATH_LEFT = 'the interval is calibrated as if the path had been kept';

/** Levels above the highest one seen that a simulated rise may reach. */
export const HEADROOM = 60;

/**
 * The test as its rule would carry it out again: the same start, steps, numbers of drops (those made, where its stop
 * rule was not reached) and hits on each tyre. Where the path was left, the rule is simulated as if it had been kept.
 *
 * @param energyOf J of a drop: asked for drops at other levels, so that energy must follow from the level
 * @param rig whose limits and resolution a rule keeps that chooses its levels itself
 */
export function repeatable(
  protocol: ImpactProtocol,
  replay: ReplayedSample,
  observations: Observations,
  energyOf: Measure,
  rig: Rig | null = null,
): Repeatable {
  const no = (why: string): Repeatable => ({ kind: 'not-repeatable', why });
  const used = replay.drops.filter(({ use, drop }) => use === 'used' && energyOf(drop) !== null);
  const first = used[0];
  if (first === undefined) return no('no drop counts');
  if (protocol.energy !== 'potential') return no('the energy of a drop does not follow from its level');
  if (protocol.vary !== 'mass' && hasSeveralMasses(used))
    return no('the drops were made with several masses');
  const { scale, standard } = laws[protocol.distribution];
  const base: ExperimentBase = {
    law: standard,
    share: observations.mostDrops > 1 ? ASSUMED_SHARE : 0,
    energyAt: (level) => toScale(energyOf(atLevel(first.drop, level, protocol))!, scale),
  };
  const remark = replay.series.some(({ broken }) => broken !== null) ? PATH_LEFT : null;
  const made = (experiment: Experiment | null, tabulated: TabulatedTest | null = null): Repeatable =>
    experiment === null
      ? no('its levels are no rising energies')
      : { kind: 'repeatable', experiment, tabulated, remark };

  switch (protocol.method) {
    case 'up-and-down':
    case 'transformed-up-and-down': {
      const series = steppedSeries(used, replay, protocol);
      if (series.length === 0) return no('no drop stands on a level');
      return made(steppedExperiment(series, protocol, base), inTable(protocol, series, base));
    }
    case 'rising-height': {
      const [only, ...others] = replay.series;
      if (only === undefined || others.length > 0) return no('the drops belong to several series');
      const top = used.reduce((most, { level }) => Math.max(most, level ?? 0), 0);
      const highest = Math.min(only.levels!.highest, top + HEADROOM);
      if (highest <= only.levels!.within(0)) return no('it has one level only');
      return made(risingExperiment(only.levels!, highest, observations.observations.length, base));
    }
    case 'fixed-level': {
      const planned = [...(protocol.levels ?? [])].sort((a, b) => a - b);
      if (planned.length < 2) return no('it has one level only');
      return made(fixedExperiment(planned, fixedHits(used, planned, protocol), base));
    }
    case 'langlie':
    case 'd-optimal': {
      const [only, ...others] = replay.series;
      const levels = chosenLevels(protocol, rig);
      if (only === undefined || others.length > 0) return no('the drops belong to several series');
      if (levels === null) return no('nothing bounds its levels');
      const told = toldBy(observations.observations, scale);
      if (told === null) return no('all drops had one outcome');
      const stop = stopOf(protocol, only, used.length);
      const series = {
        rule: simulatedRuleFor({ ...protocol, stop }, rig),
        levels,
        mostDrops: dropsAtMost(stop, used.length),
      };
      return made(chosenExperiment(series, told, base));
    }
  }
}

/** How finely the outcomes have told failures from survivals, on the fitted scale; null where there are none of one. */
function toldBy(observations: readonly Observation[], scale: 'identity' | 'log'): number | null {
  const survived = observations.flatMap(({ lower, upper }) => (upper === Infinity ? lower : []));
  const failed = observations.flatMap(({ lower, upper }) => (lower === -Infinity ? upper : []));
  const on = (value: number) => toScale(value, scale);
  if (survived.length === 0 || failed.length === 0) return null;
  const all = [...survived, ...failed];
  const range = on(Math.max(...all)) - on(Math.min(...all));
  return resolutionOf(on(Math.max(...survived)), on(Math.min(...failed)), range);
}

/** The stop rule where it ended a series; else the number of drops that were made. */
function stopOf({ stop }: ImpactProtocol, { advice }: SeriesOutcome, made: number): Stop {
  return stop !== null && advice.decision === 'stop' ? stop : { drops: made };
}

function fixedHits(
  used: readonly ReplayedDrop[],
  planned: readonly number[],
  { vary }: ImpactProtocol,
): FixedHit[] {
  const numbers = new Map<string, number>();
  return used.map(({ drop }) => {
    const specimen = numbers.get(drop.specimen) ?? numbers.size;
    numbers.set(drop.specimen, specimen);
    const level = vary === 'mass' ? (drop.mass ?? planned[0]!) : drop.height;
    return { specimen, level: nearestOf(planned, level) };
  });
}

function atLevel(drop: Drop, level: number, { vary }: ImpactProtocol): Drop {
  return vary === 'mass' ? { ...drop, mass: level } : { ...drop, height: level };
}

/** Whether masses differ by more than scatter of weighing: more than a fiftieth. */
function hasSeveralMasses(used: readonly ReplayedDrop[]): boolean {
  const masses = used.flatMap(({ drop }) => drop.mass ?? []);
  return masses.length > 0 && Math.max(...masses) > 1.02 * Math.min(...masses);
}

function steppedSeries(
  used: readonly ReplayedDrop[],
  replay: ReplayedSample,
  protocol: ImpactProtocol,
): SteppedSeries[] {
  const numbers = new Map<string, number>();
  return replay.series.flatMap((one): SteppedSeries[] => {
    const { levels, lastPlace } = one;
    const last = replay.drops.find(({ place }) => place === lastPlace);
    const drops = used.filter(({ path }) => path === (last ?? used[0]!).path);
    const start = drops[0]?.level ?? null;
    if (start === null || levels === null) return [];
    const specimens = drops.map(({ drop }) => {
      const known = numbers.get(drop.specimen) ?? numbers.size;
      numbers.set(drop.specimen, known);
      return known;
    });
    return [{ levels, start, stop: stopOf(protocol, one, drops.length), specimens }];
  });
}

/** The table has one series of equal steps on the scale of a normal law, one hit a tyre, and no limit in the way. */
export function inTable(
  { method, distribution, step }: ImpactProtocol,
  series: readonly SteppedSeries[],
  { share, energyAt }: ExperimentBase,
): TabulatedTest | null {
  const [only, ...others] = series;
  if (method !== 'up-and-down' || only === undefined || others.length > 0 || share > 0) return null;
  const isEqual = distribution === (step?.kind === 'ratio' ? 'lognormal' : 'normal');
  const counts = Object.values(only.stop).filter((count) => count !== undefined);
  if (!isEqual || counts.length !== 1 || only.stop.drops === undefined) return null;
  const { levels, start, specimens } = only;
  if (!isFree(levels, start, specimens.length)) return null;
  const at = (index: number) => energyAt(levels.at(index));
  return { drops: specimens.length, start: at(start), step: at(start + 1) - at(start) };
}

/** Whether the limits leave room for a walk: more steps than one walk in a thousand makes to one side. */
function isFree({ lowest, highest }: Levels, start: number, drops: number): boolean {
  const room = Math.min(drops, 8);
  return start - lowest >= room && highest - start >= room;
}
