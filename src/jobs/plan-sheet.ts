import type { ImpactProtocol } from '../documents/kinds.ts';
import { hitsAllowed, plannedLevels } from '../impact/rules/method-rules.ts';
import type { Specimen } from '../logs/register.ts';
import type { SheetRow } from '../result/plan.ts';
import { type RandomStream, randomStream } from '../statistics/random/random-stream.ts';
import type { DesignedTest } from './design-of.ts';
import { startOf } from './plan-levels.ts';

/** A specimen as a sheet needs it. */
export type SheetSpecimen = Pick<Specimen, 'specimen' | 'construction' | 'mass'>;

/** Specimens that nobody has named yet: T-01, T-02, …. */
export function unnamed(count: number): SheetSpecimen[] {
  const digits = Math.max(2, String(count).length);
  return Array.from({ length: count }, (_, i) => ({
    specimen: `T-${String(i + 1).padStart(digits, '0')}`,
    construction: null,
    mass: null,
  }));
}

/**
 * The order in which specimens come under the mass: blocks of one specimen of each construction, so that whatever drifts
 * in a session meets all alike; where masses are known the heaviest of each construction meet in one block, the next in
 * another. Blocks, specimens within them, and the sites of each specimen stand in an order drawn from the seed.
 */
export function runSheet(
  specimens: readonly SheetSpecimen[],
  design: DesignedTest,
  seed: number,
): SheetRow[] {
  const stream = randomStream(seed, 0);
  const blocks = shuffled(blocksOf(specimens), stream);
  const angles = siteAngles(design.protocol);
  const heights = plannedHeights(design, specimens.length * angles.length, stream);
  const rows: SheetRow[] = [];
  blocks.forEach((block, b) => {
    for (const { specimen, construction } of shuffled(block, stream)) {
      for (const [hit, site] of shuffled(angles, stream).entries()) {
        const order = rows.length + 1;
        const plannedHeight = heights(order, hit);
        rows.push({ order, block: b + 1, specimen, construction, site, plannedHeight });
      }
    }
  });
  return rows;
}

function blocksOf(specimens: readonly SheetSpecimen[]): SheetSpecimen[][] {
  const groups = new Map<string, SheetSpecimen[]>();
  for (const specimen of specimens) {
    const key = specimen.construction ?? '';
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [specimen]);
    else group.push(specimen);
  }
  const sorted = [...groups.values()].map((group) => group.toSorted((a, b) => (b.mass ?? 0) - (a.mass ?? 0)));
  const most = Math.max(0, ...sorted.map((group) => group.length));
  return Array.from({ length: most }, (_, k) => sorted.flatMap((group) => group[k] ?? []));
}

/** Angles that the protocol allows, evenly round the tyre from the end of the first stretch to avoid. */
export function siteAngles({ sites, method, ...protocol }: ImpactProtocol): number[] {
  const count = hitsAllowed({ sites, method, ...protocol });
  const wanted = Number.isFinite(count) ? count : 1;
  const spacing = sites.spacing ?? 360 / Math.max(wanted, 8);
  const isFree = (angle: number) =>
    sites.avoid.every(({ center, half }) => Math.abs(turned(angle - center + 180) - 180) > half);
  const from = sites.avoid[0] ? turned(sites.avoid[0].center + sites.avoid[0].half + 1) : 0;
  const free: number[] = [];
  for (let k = 0; k * spacing < 360 - spacing / 2 + 1e-9; k++) {
    const angle = turned(from + k * spacing);
    if (isFree(angle)) free.push(angle);
  }
  return free.slice(0, wanted);
}

function turned(angle: number): number {
  return ((angle % 360) + 360) % 360;
}

/**
 * Heights that are known before the test: of the first drop, of a rise (until its tyre fails), of fixed levels in random
 * order.
 */
function plannedHeights(
  design: DesignedTest,
  rows: number,
  stream: RandomStream,
): (order: number, hit: number) => number | null {
  const { protocol } = design;
  if (protocol.vary === 'mass') return () => protocol.height;
  if (protocol.levels !== null) {
    const levels = protocol.levels;
    const all: number[] = [];
    // Every level once before any comes again, each set in an order of its own.
    while (all.length < rows) all.push(...shuffled(levels, stream));
    return (order) => all[order - 1]!;
  }
  if (protocol.method === 'rising-height') {
    const { at, within } = plannedLevels(protocol, design.rig);
    return (_, hit) => at(within(within(0) + hit));
  }
  const start = startOf(design);
  return (order) => (order === 1 ? start : null);
}

/** A copy in random order (Fisher and Yates; Durstenfeld 1964, algorithm 235). */
function shuffled<Item>(items: readonly Item[], stream: RandomStream): Item[] {
  const all = [...items];
  for (let i = all.length - 1; i > 0; i--) {
    const j = Math.floor(stream.uniform() * (i + 1));
    [all[i], all[j]] = [all[j]!, all[i]!];
  }
  return all;
}
