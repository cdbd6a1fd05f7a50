import { fixed } from '../../quantity/amount.ts';
import { decimalsFor } from '../../quantity/format.ts';
import type { MonitoredPoint, MonitoredStandard } from '../../result/monitor.ts';
import { clean, type Page, paragraph } from '../text/page.ts';

const ROWS = 13;

/** The points over time between their limits, newest at the right: as many of the last ones as the page has room for. */
export function monitorChart(page: Page, { points, limits }: MonitoredStandard): string[] {
  const { centre, lower, upper } = limits.value;
  const values = points.map(({ value }) => value);
  const top = Math.max(upper, ...values);
  const bottom = Math.min(lower, ...values);
  const decimals = decimalsFor(limits.sigma);
  const label = (row: number) => fixed(top - ((top - bottom) * row) / (ROWS - 1), decimals);
  const rowOf = (value: number) => Math.round(((top - value) / (top - bottom)) * (ROWS - 1));
  const wide = Math.max(...[0, ROWS - 1].map((row) => label(row).length));
  const names = new Map([
    [rowOf(upper), 'upper limit'],
    [rowOf(centre), 'centre'],
    [rowOf(lower), 'lower limit'],
  ]);
  const right = 'upper limit'.length;
  const room = page.width - wide - right - 6;
  const pitch = points.length * 2 <= room ? 2 : 1;
  const shown = points.slice(-Math.floor(room / pitch));
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const line = names.has(row) ? (page.unicode ? '─' : '-') : ' ';
    const cells = shown.map((point) =>
      rowOf(point.value) === row ? mark(page, point).padEnd(pitch, ' ') : line.repeat(pitch),
    );
    // A mark with colour is longer than it looks: it is padded before it is inked.
    const body = cells.map((cell, i) => (rowOf(shown[i]!.value) === row ? ink(page, shown[i]!, cell) : cell));
    const name = names.get(row);
    const value =
      name === undefined
        ? label(row)
        : fixed({ 'upper limit': upper, centre, 'lower limit': lower }[name]!, decimals);
    return `  ${value.padStart(wide)}  ${body.join('')}${name === undefined ? '' : `  ${page.ink.dim(name)}`}`.trimEnd();
  });
  const cut = points.length - shown.length;
  const legend = `${signs(page).quiet} quiet, ${signs(page).signal} signals; ${cut > 0 ? `the last ${shown.length} of ${points.length} points` : 'one column a point'}, base period marked below`;
  const base = shown.map(({ inBase }) => (inBase ? (page.unicode ? '▔' : '^') : ' ').repeat(pitch)).join('');
  return [
    ...rows,
    ...(base.trim() === '' ? [] : [`${' '.repeat(wide + 4)}${base}`.trimEnd()]),
    ...paragraph(page, clean(page, legend, 200)),
  ];
}

function signs({ unicode }: Page) {
  return unicode ? { quiet: '○', signal: '●' } : { quiet: 'o', signal: '#' };
}

function mark(page: Page, { signals }: MonitoredPoint): string {
  return signals.length === 0 ? signs(page).quiet : signs(page).signal;
}

function ink(page: Page, { signals }: MonitoredPoint, cell: string): string {
  return signals.length === 0 ? cell : page.ink.red(cell);
}
