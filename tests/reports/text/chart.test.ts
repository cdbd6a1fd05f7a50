import { describe, expect, it } from 'vitest';
import { chart } from '../../../src/reports/text/chart.ts';
import { pageOf } from '../../../src/reports/text/page.ts';
import { passing, pathOf, rising } from '../results.ts';

const page = pageOf({ version: '1', width: 80, colour: 0, unicode: true });
const draw = (path: typeof passing.path, of = passing) => chart(page, { ...of, path });

describe('chart', () => {
  it('draws a staircase: levels down the side, the highest first, drops along, filled for failed', () => {
    const lines = draw(
      pathOf([
        [500, 'o'],
        [525, 'x'],
        [500, 'x'],
        [475, '-'],
        [475, 'o'],
      ]),
    );
    // m·g·h = 8 kg · 9.8125 m/s² · 0.525 m = 41.2 J; 39.25 J and 37.29 J below it.
    expect(lines).toEqual([
      '                  1       5   failed',
      '  525 mm  41.2 J    ●         1 of 1',
      '  500 mm  39.3 J  ○   ●       1 of 2',
      '  475 mm  37.3 J        × ○   0 of 1',
      '',
      '  ● failed, ○ survived, × left out; one column a drop, in order',
    ]);
  });

  it('takes heights within the tolerance of a level as that level', () => {
    const lines = draw(
      pathOf([
        [500, 'o'],
        [500.6, 'x'],
        [499.4, 'o'],
        [525, 'x'],
        [500, 'x'],
      ]),
    );
    expect(lines.filter((line) => line.includes(' mm '))).toHaveLength(2);
    expect(lines[2]).toMatch(/^ {2}500(\.0)? mm .*○ ● ○ {3}● {3}2 of 4$/);
  });

  it('sums up what does not fit, with the counts of each level', () => {
    const drops = Array.from(
      { length: 300 },
      (_, i) => [500 + 25 * (i % 2), i % 4 === 1 ? 'x' : 'o'] as const,
    );
    const lines = draw(pathOf(drops));
    expect(lines[1]).toMatch(/525 mm .* 75 +75 +0 +●{10}○{10}$/);
    expect(lines[2]).toMatch(/500 mm .* 0 +150 +0 +○{20}$/);
  });

  it('shows one failure of a thousand', () => {
    const drops = Array.from({ length: 1000 }, (_, i) => [500, i === 7 ? 'x' : 'o'] as const);
    expect(draw(pathOf(drops))[1]).toMatch(/ ●○{19}$/);
  });

  it('puts the tyres along where a rising-height test has too many drops', () => {
    const path = pathOf(
      Array.from({ length: 12 }, (_, tyre) =>
        Array.from({ length: 8 }, (_, i) => [350 + 25 * i, i === 7 - (tyre % 2) ? 'x' : 'o'] as const),
      )
        .flat()
        .filter(([height], i) => height < 525 || Math.floor(i / 8) % 2 === 0),
    );
    let tyre = 0;
    const byTyre = path.map((drop) => {
      if (drop.height === 350) tyre += 1;
      return { ...drop, specimen: `T-${tyre}` };
    });
    const lines = draw(byTyre, rising);
    expect(lines.at(-1)).toBe('  ● failed, ○ survived; one column a tyre');
    expect(lines[1]).toMatch(/^ {2}525 mm {2}41\.2 J {2}●( {3}●){5} {6}6 of 6$/);
    expect(lines[2]).toMatch(/^ {2}500 mm {2}39\.3 J {2}(○ ● ){6} {2}6 of 12$/);
  });

  it('draws the series of a log apart', () => {
    const path = pathOf([
      [500, 'o'],
      [600, 'x'],
      [525, 'x'],
      [575, 'o'],
    ]).map((drop, i) => ({ ...drop, series: i % 2 === 0 ? 'A' : 'B' }));
    const lines = draw(path);
    expect(lines.filter((line) => line.startsWith('  series'))).toEqual(['  series A', '  series B']);
    expect(lines.filter((line) => line.includes(' mm '))).toHaveLength(4);
  });

  it('leaves the energy away where it is not known of every drop', () => {
    const path = pathOf([[500, 'o']]).map((drop) => ({ ...drop, energy: null }));
    expect(draw(path)[1]).toBe('  500 mm  ○   0 of 1');
  });

  it('puts scattered heights into at most 24 rows', () => {
    const lines = draw(pathOf(Array.from({ length: 50 }, (_, i) => [300 + 9 * i, 'o'] as const)));
    expect(lines.filter((line) => line.includes(' mm ')).length).toBeLessThanOrEqual(24);
    expect(lines[1]).toMatch(/to 741 mm/);
  });
});
