import { fixed } from '../../quantity/amount.ts';
import { counted, decimalsFor } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { grouped } from '../grouped.ts';
import { isStretch, type Level, levelsOf, type PathDrop, type Standing, standingOf } from './levels.ts';
import { clean, named, type Page, paragraph } from './page.ts';
import { type Column, table } from './table.ts';

/** More rows than this nobody reads at a glance. */
const MOST_ROWS = 24;
/** More charts than this are summed up in one. */
const MOST_SERIES = 4;
const BAR = 20;

/**
 * The drops as the protocol's engineer draws them on paper: levels up, drops along, one chart a series. A
 * rising-height test of more drops than the page is wide has its tyres along; else the counts of each level stand
 * instead.
 */
export function chart(page: Page, result: ImpactResult): string[] {
  const { path } = result;
  if (path.length === 0) return [];
  const series = grouped(path, (drop) => drop.series);
  if (series.length <= MOST_SERIES) {
    const byDrop = drawAll(page, series, (drops) =>
      drops.length > page.width ? null : drops.map((drop) => [drop]),
    );
    if (byDrop !== null) return [...byDrop, '', ...legend(page, path, 'one column a drop, in order')];
    const bySpecimen =
      result.protocol.method === 'rising-height'
        ? drawAll(page, series, (drops) => bySpecimens(drops, page.width))
        : null;
    if (bySpecimen !== null) return [...bySpecimen, '', ...legend(page, path, 'one column a tyre')];
  }
  return sums(page, path, series.length);
}

function legend(page: Page, path: readonly PathDrop[], columns: string): string[] {
  const { failed, survived, leftOut } = page.marks;
  const out = path.some((drop) => standingOf(drop) === 'leftOut') ? `, ${leftOut} left out` : '';
  return paragraph(page, `${failed} failed, ${survived} survived${out}; ${columns}`);
}

/** One chart a series, or null where one of them does not fit. */
function drawAll(
  page: Page,
  series: readonly (readonly [string | null, readonly PathDrop[]])[],
  columnsOf: (drops: readonly PathDrop[]) => readonly (readonly PathDrop[])[] | null,
): string[] | null {
  const lines: string[] = [];
  for (const [name, drops] of series) {
    const columns = columnsOf(drops);
    const drawn = columns === null ? null : draw(page, columns);
    if (drawn === null) return null;
    if (series.length > 1) {
      if (lines.length > 0) lines.push('');
      lines.push(...paragraph(page, name === null ? 'without a series' : `series ${named(name)}`));
    }
    lines.push(...drawn);
  }
  return lines;
}

/** The drops of each tyre, or null where there are too many tyres to draw. */
function bySpecimens(drops: readonly PathDrop[], most: number): PathDrop[][] | null {
  if (new Set(drops.map(({ specimen }) => specimen)).size > most) return null;
  return grouped(drops, ({ specimen }) => specimen).map(([, own]) => own);
}

/** The chart of one series, a drop or a tyre in each column, or null where it does not fit. */
function draw(page: Page, columns: readonly (readonly PathDrop[])[]): string[] | null {
  const { levels, at } = levelsOf(columns.flat(), MOST_ROWS);
  const labels = labelsOf(page, levels);
  const tallies = levels.map(({ failed, survived }) => `${failed} of ${failed + survived}`);
  const left = labels[0]!.length;
  const right = Math.max('failed'.length, ...tallies.map((tally) => tally.length)) + 2;
  const room = page.width - left - right;
  const pitch = columns.length * 2 <= room ? 2 : 1;
  const across = columns.length * pitch;
  if (across > room) return null;
  const cells = levels.map(() => columns.map(() => ' '));
  let next = 0;
  for (const [c, column] of columns.entries()) {
    const standings = levels.map(() => new Set<Standing>());
    for (const drop of column) standings[at[next++]!]!.add(standingOf(drop));
    for (const [level, standing] of standings.entries()) cells[level]![c] = mark(page, standing);
  }
  const rows = cells.map((row, level) => {
    const line = row.map((cell) => cell + ' '.repeat(pitch - 1)).join('');
    return `${labels[level]}${line}${tallies[level]!.padStart(right)}`;
  });
  const ruler = `${' '.repeat(left)}${ticks(columns.length, pitch).padEnd(across)}${'failed'.padStart(right)}`;
  return [page.ink.dim(ruler), ...rows];
}

/** Where a repeated drop shares a cell with the one it repeats, the one that counts is shown. */
function mark(page: Page, standings: ReadonlySet<Standing>): string {
  if (standings.has('failed')) return page.ink.red(page.marks.failed);
  if (standings.has('survived')) return page.marks.survived;
  return standings.has('leftOut') ? page.ink.dim(page.marks.leftOut) : ' ';
}

/** Numbers of drops or tyres above their columns, each ending where its column stands: 1, 5, 10, 15, …. */
function ticks(drops: number, pitch: number): string {
  let line = '1';
  for (let number = 5; number <= drops; number += 5) {
    line = line.padEnd((number - 1) * pitch + 1 - String(number).length) + number;
  }
  return line;
}

/** `  575 mm  45.1 J  `, all of one width; energies as fine as their steps need. */
function labelsOf(page: Page, levels: readonly Level[]): string[] {
  const heights = levels.map((level) => heightText(level, levels));
  const energies = energyTexts(levels);
  const wide = (texts: readonly string[]) => Math.max(...texts.map((text) => text.length));
  return levels.map((_, i) => {
    const energy = energies === null ? '' : `${energies[i]!.padStart(wide(energies))}  `;
    return clean(page, `  ${heights[i]!.padStart(wide(heights))}  ${energy}`);
  });
}

function heightText(level: Level, levels: readonly Level[]): string {
  if (level.isMass)
    return isStretch(level)
      ? `${fixed(level.from, 2)} to ${fixed(level.to, 2)} kg`
      : `${fixed(level.height, 2)} kg`;
  const whole = levels.every(({ height }) => Math.abs(height - Math.round(height)) < 1e-6);
  const decimals = whole ? 0 : 1;
  if (!isStretch(level)) return `${fixed(level.height, decimals)} mm`;
  return `${fixed(level.from, 0)} to ${fixed(level.to, 0)} mm`;
}

function energyTexts(levels: readonly Level[]): string[] | null {
  if (levels.some(({ energy }) => energy === null)) return null;
  const energies = levels.map(({ energy }) => energy!);
  const steps = energies.slice(1).map((energy, i) => Math.abs(energies[i]! - energy));
  const step = Math.min(...steps.filter((size) => size > 0));
  const decimals = Number.isFinite(step) ? Math.min(3, decimalsFor(step)) : 1;
  return energies.map((energy) => `${fixed(energy, decimals)} J`);
}

/** The counts of each level, with a bar of the share that failed. */
function sums(page: Page, drops: readonly PathDrop[], series: number): string[] {
  const { levels } = levelsOf(drops, MOST_ROWS);
  const energies = energyTexts(levels);
  const columns: Column[] = [
    { head: levels.some(({ isMass }) => isMass) ? 'mass' : 'height', align: 'right' },
    ...(energies === null ? [] : [{ head: 'energy', align: 'right' } as const]),
    { head: 'failed', align: 'right' },
    { head: 'survived', align: 'right' },
    { head: 'left out', align: 'right' },
    { head: 'share failed', align: 'left', least: BAR },
  ];
  const rows = levels.map((level, i) => [
    heightText(level, levels),
    ...(energies === null ? [] : [energies[i]!]),
    String(level.failed),
    String(level.survived),
    String(level.leftOut),
    bar(page, level),
  ]);
  const over = series > 1 ? ` of ${series} series together` : '';
  const text = `${counted(drops.length, 'drop')}${over}, summed up level by level; ${page.marks.failed} share failed, ${page.marks.survived} share survived`;
  return [...table(page, columns, rows), '', ...paragraph(page, text)];
}

function bar(page: Page, { failed, survived }: Level): string {
  if (failed + survived === 0) return '';
  const share = failed / (failed + survived);
  // One failure of a thousand shows, and so does one survival.
  const filled =
    share === 0 ? 0 : share === 1 ? BAR : Math.min(BAR - 1, Math.max(1, Math.round(share * BAR)));
  return page.marks.failed.repeat(filled) + page.marks.survived.repeat(BAR - filled);
}
