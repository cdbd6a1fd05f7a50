import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol, Rig } from '../../documents/kinds.ts';
import type { Drop } from '../../logs/drop.ts';
import { type Levels, levelsFrom } from '../rules/levels.ts';
import { isStepping, levelLimits, levelResolution, ruleFor, steppingRuleFor } from '../rules/method-rules.ts';
import type { Advice } from '../rules/rule.ts';
import { chosenPath } from './chosen-path.ts';
import type { Group } from './groups.ts';
import type { PathBasis, PathSettings, SeriesPath } from './path.ts';
import type { Visit } from './replayed.ts';
import { type RisingSeriesPath, risingPath } from './rising-path.ts';
import { checkEnd, checkFirstHits, unfinishedNote } from './series-end.ts';
import { siteNumber } from './sites.ts';
import type { Tyre } from './tyre.ts';
import { upAndDownPath } from './up-and-down-path.ts';

/** How one series went. */
export interface SeriesOutcome {
  /** Indices of the samples that its drops belong to: several where a rig or rim changed within it. */
  readonly samples: ReadonlySet<number>;
  /** As the log names it; empty where the log has one series without a name. */
  readonly name: string;
  /** The levels that its last drops moved on, anchored anew after a start or step off the plan; null where each was chosen. */
  readonly levels: Levels | null;
  /** What the rule says now. */
  readonly advice: Advice;
  /** Why count formulas do not apply to it; null where the path was kept. */
  readonly broken: string | null;
  /** Valid drops, as the stop rule counts them. */
  readonly progress: { readonly drops: number; readonly failures: number; readonly reversals: number };
  /** Place of its last drop. */
  readonly lastPlace: number;
}

/** Takes the drops through the rule, series by series, whatever order the log interleaves them in. */
export function followSeries(
  protocol: ImpactProtocol,
  rigOf: (drop: Drop) => Rig | null,
  samples: readonly Group[],
  visits: readonly Visit[],
  list: DeviationList,
): { readonly series: readonly SeriesOutcome[]; readonly notes: readonly string[] } {
  const isRising = protocol.method === 'rising-height';
  const names = seriesNames(protocol);
  const several = new Set(samples.map(({ strand }) => strand)).size > 1;
  const groups = inSeries(visits, samples, names, several);
  const basis = pathBasis(protocol);
  const rising: RisingSeriesPath[] = [];
  const numbers = { last: 0 };
  // The limits are those of the rig that the series was begun on.
  const pathOf = (index: number, rig: Rig | null): SeriesPath => {
    if (!isStepping(protocol.method))
      return chosenPath({ ...basis, series: index }, protocol, ruleFor(protocol, rig));
    const settings = { ...basis, ...pathSettings(protocol, rig), series: index };
    if (!isRising) return upAndDownPath(settings);
    const path = risingPath({ ...settings, ...risingSettings(protocol, numbers) });
    rising.push(path);
    return path;
  };
  const series = groups.map((group, index): Series & { path: SeriesPath } => {
    for (const visit of group.visits) visit.path = index;
    return { ...group, path: pathOf(index, rigOf(group.visits[0]!.drop)) };
  });
  takeInOrder(visits, series, list);
  for (const { name, path, visits: own } of series) {
    checkEnd({ name, file: own[0]!.drop.file, path }, protocol, list);
  }
  if (rising.length > 0) checkFirstHits(rising, visits[0]!.drop.file, list);
  const noStop = 'The protocol has no stop rule: how many drops the test should have is not checked.';
  return {
    series: series.map(({ name, path, visits: own }) => ({
      samples: samplesOf(own, samples),
      name,
      levels: path.levels(),
      advice: path.advice(),
      broken:
        path.broken() ?? (samplesOf(own, samples).size > 1 ? 'rig or rim changed within the series' : null),
      progress: path.progress(),
      lastPlace: own.at(-1)!.place,
    })),
    notes: [
      ...(protocol.stop === null && protocol.perLevel === null ? [noStop] : []),
      ...unfinishedNote(rising),
    ],
  };
}

interface Series {
  readonly name: string;
  readonly visits: readonly Visit[];
  /** Those that steer, in order: what a path may look ahead at. */
  readonly steering: readonly Visit[];
}

/** In the order of the log, so that deviations come in that order too. */
function takeInOrder(
  visits: readonly Visit[],
  series: readonly (Series & { readonly path: SeriesPath })[],
  list: DeviationList,
): void {
  const reached = series.map(() => 0);
  for (const visit of visits) {
    if (visit.use === 'set-aside') continue;
    const index = visit.path;
    const { path, steering } = series[index]!;
    const at = reached[index]!;
    path.take(visit, () => steering.slice(at, at + 3), list);
    if (visit.steers) reached[index] = at + 1;
  }
}

/** @param several whether series of several constructions or rigs are told apart by more than the log's names. */
function inSeries(
  visits: readonly Visit[],
  samples: readonly Group[],
  nameOf: (visit: Visit) => string,
  several: boolean,
): Series[] {
  const groups = new Map<string, { name: string; visits: Visit[] }>();
  for (const visit of visits) {
    if (visit.use === 'set-aside') continue;
    const name = nameOf(visit);
    const { strand, called } = samples[visit.sample]!;
    const key = several ? `${strand}\n${name}` : name;
    const group = groups.get(key);
    if (group === undefined) {
      const full = several ? [called, name].filter((part) => part !== '').join(' ') : name;
      groups.set(key, { name: full, visits: [visit] });
    } else group.visits.push(visit);
  }
  return [...groups.values()].map(({ name, visits: own }) => ({
    name,
    visits: own,
    steering: own.every(({ steers }) => steers) ? own : own.filter(({ steers }) => steers),
  }));
}

function samplesOf(visits: readonly Visit[], samples: readonly Group[]): ReadonlySet<number> {
  if (samples.length === 1) return new Set([0]);
  return new Set(visits.map(({ sample }) => sample));
}

/**
 * Which series a drop belongs to: the log's column and, up-and-down on `series-per-site`, specimen and site. A rise is
 * a series within a series: its stop rule counts over all specimens.
 */
function seriesNames(protocol: ImpactProtocol): (visit: Visit) => string {
  if (protocol.method === 'rising-height' || protocol.sites.each !== 'series-per-site') {
    return ({ drop }) => drop.series ?? '';
  }
  return ({ drop, tyre }) => {
    const site = siteNumber(tyre, drop.site);
    return [drop.series, drop.specimen, `site ${site}`].filter((part) => part !== null).join(' ');
  };
}

function risingSettings(protocol: ImpactProtocol, numbers: { last: number }) {
  const bySite = protocol.sites.each === 'series-per-site';
  return {
    riseOf: ({ drop, tyre }: Visit): string | Tyre =>
      bySite ? `${siteNumber(tyre, drop.site)}\n${tyre.name}` : tyre,
    goesOnAfterFailure: protocol.afterFailure === 'new-site',
    stopsBySpecimens: protocol.stop?.specimens !== undefined,
    nextNumber: () => {
      numbers.last += 1;
      return numbers.last;
    },
  };
}

/** The share by which a falling mass may differ from the planned one (CONTRACT: DROP-11). */
const MASS_TOLERANCE = 0.005;

/** A mass is set as exactly at every level: its tolerance is that of the lowest one that the protocol names. */
function pathBasis({
  vary,
  heightTolerance,
  start,
  levels,
  limits,
}: ImpactProtocol): Omit<PathBasis, 'series'> {
  const lightest = start ?? levels?.[0] ?? limits.min ?? 0;
  return { tolerance: vary === 'height' ? heightTolerance : MASS_TOLERANCE * lightest, varied: vary };
}

function pathSettings(
  protocol: ImpactProtocol,
  rig: Rig | null,
): Pick<PathSettings, 'rule' | 'waits' | 'relevel'> {
  const limits = levelLimits(protocol, rig);
  const resolution = levelResolution(protocol, rig);
  return {
    rule: steppingRuleFor(protocol, rig),
    waits: protocol.survivalsToRaise !== null,
    relevel: (start, step) => levelsFrom(start, step, limits, resolution, protocol.vary),
  };
}
