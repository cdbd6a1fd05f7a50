import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { Sites } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { counted, upTo } from '../../quantity/format.ts';
import { leaveOut, raiseAt, type Visit } from './replayed.ts';
import { pastOf, type Tyre, type UsedSite } from './tyre.ts';

/** Degrees. Nearer than this two hits meet the same spot, as far as a spacing does not say it closer. */
const SAME_SPOT = 30;
/** The same where no spacing is stated: what an operator can set by eye. Common practice, no source. */
const SAME_SETTING = 5;
const SLACK = 1e-6;

/** Degrees between two angles, round the tyre: 0 to 180. */
export function angleBetween(a: number, b: number): number {
  const apart = Math.abs(a - b) % 360;
  return Math.min(apart, 360 - apart);
}

/** The number of the site of a tyre that a hit meets, in the order of first use: for sites hit again and again. */
export function siteNumber(
  tyre: Tyre,
  angle: number | null,
  of: 'angles' | 'countedAngles' = 'angles',
): number {
  if (angle === null) return 0;
  const angles = pastOf(tyre)[of];
  const found = angles.findIndex((other) => angleBetween(other, angle) <= SAME_SETTING);
  return found >= 0 ? found + 1 : angles.push(angle);
}

/**
 * Counts the hits on each specimen and raises DROP-33 beyond the planned number; where one spot is hit again and
 * again it counts spots, and nothing on a spot too many stands in the estimate.
 *
 * @param allowed hits, or spots, on one specimen.
 */
export function hitCount(sites: Sites, allowed: number) {
  const bySpot = sites.each !== 'new-spot';
  return (visit: Visit, list: DeviationList): void => {
    const { tyre, drop } = visit;
    const before = tyre.counted;
    const ordinal = bySpot ? Math.max(1, siteNumber(tyre, drop.site, 'countedAngles')) : before + 1;
    tyre.counted = Math.max(before, ordinal);
    if (ordinal <= allowed) return;
    if (ordinal <= before) leaveOut(visit, 'DROP-33');
    else {
      const unit = bySpot ? 'site' : 'hit';
      const found = () =>
        `${unit} ${ordinal} on ${quote(tyre.name)}, planned at most ${counted(allowed, unit)} a specimen`;
      raiseAt(list, visit, 'DROP-33', found);
    }
  };
}

/**
 * Watches where specimens are hit: a site used twice (DROP-31), one too near to another or in an avoided stretch
 * (DROP-32).
 */
export function siteWatch(sites: Sites) {
  const repeats = sites.each !== 'new-spot';
  const same = repeats ? SAME_SETTING : Math.min(SAME_SPOT, sites.spacing ?? SAME_SETTING);

  /** @param counts false for a drop that the log left out: it loaded the tyre all the same. */
  return (visit: Visit, counts: boolean, list: DeviationList): void => {
    const { site } = visit.drop;
    if (site === null) return;
    if (counts) checkAvoided(visit, site, sites, list);
    take(visit, site, pastOf(visit.tyre).sites, counts, list);
  };

  function take(visit: Visit, angle: number, mine: UsedSite[], counts: boolean, list: DeviationList): void {
    const near = nearest(mine, angle);
    const apart = near === null ? Infinity : angleBetween(near.angle, angle);
    // Sites set to the spacing itself are apart; without a spacing the same setting includes its limit.
    const isSame = sites.spacing === null || repeats ? apart <= same + SLACK : apart < same - SLACK;
    if (near === null || !isSame) mine.push({ angle, line: visit.drop.line, counts });
    if (near === null || !counts) return;
    const found = () =>
      `${quote(visit.drop.specimen)} hit at ${upTo(angle, 1)}°, ${upTo(apart, 1)}° from the hit of line ${near.line}`;
    if (isSame) {
      if (!repeats) raiseSame(visit, near, found, list);
      near.counts = true;
    } else if (sites.spacing !== null && apart < sites.spacing - SLACK) {
      const spacing = sites.spacing;
      raiseAt(list, visit, 'DROP-32', () => `${found()}, planned at least ${upTo(spacing, 1)}°`);
    }
  }

  function raiseSame(visit: Visit, near: UsedSite, found: () => string, list: DeviationList): void {
    raiseAt(list, visit, 'DROP-31', found, near.counts ? {} : LOADED_ONLY);
  }
}

/** What a hit that the log left out does to the next one at its place. */
const LOADED_ONLY = {
  severity: 'note',
  effect: 'that hit was left out, but has loaded the tyre there; the drop stays in',
} as const;

function checkAvoided(visit: Visit, angle: number, sites: Sites, list: DeviationList): void {
  const stretch = sites.avoid.find(({ center, half }) => angleBetween(center, angle) <= half + SLACK);
  if (stretch === undefined) return;
  raiseAt(
    list,
    visit,
    'DROP-32',
    () =>
      `${quote(visit.drop.specimen)} hit at ${upTo(angle, 1)}°, in the avoided stretch ` +
      `${upTo(stretch.center, 1)}° ± ${upTo(stretch.half, 1)}°`,
    { effect: 'the drop stays in, and may have met a weaker or stiffer place' },
  );
}

function nearest(sites: readonly UsedSite[], angle: number): UsedSite | null {
  let best: UsedSite | null = null;
  for (const site of sites) {
    if (best === null || angleBetween(site.angle, angle) < angleBetween(best.angle, angle)) best = site;
  }
  return best;
}
