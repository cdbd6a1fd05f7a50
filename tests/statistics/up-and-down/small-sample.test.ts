import { describe, expect, test } from 'vitest';
import type { LevelDrop } from '../../../src/statistics/up-and-down/grid.ts';
import { smallSampleMedian } from '../../../src/statistics/up-and-down/small-sample.ts';
import { expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen08 from '../../reference/sen-08/SEN-08-dixon-small-sample-k-table.json' with { type: 'json' };

/** A series in the table's letters (O survived, X failed), from level 0 by the rule. */
function series(letters: string): LevelDrop[] {
  let level = 0;
  return [...letters].map((letter) => {
    const drop = { level, failed: letter === 'X' };
    level += drop.failed ? -1 : 1;
    return drop;
  });
}

/** k: the median in steps above the last level tested. */
function k(letters: string): number {
  const drops = series(letters);
  return smallSampleMedian(drops, { origin: 0, step: 1 })!.location - drops.at(-1)!.level;
}

describe(titleOf(sen08), () => {
  test(`all ${sen08.data.rows.length} values`, () => {
    expect(sen08.data.rows).toHaveLength(124);
    for (const row of sen08.data.rows) {
      const found = k(row.prefix + row.tail);
      expect(Math.abs(found - row.k_table_memory), `${row.prefix}${row.tail}`).toBeLessThanOrEqual(0.00051);
      expect(Math.abs(found - row.k_ML), `${row.prefix}${row.tail}`).toBeLessThanOrEqual(1e-8);
    }
  });

  test.each(sen08.expected.filter((entry) => entry.name.includes('|')).map((entry) => entry.name))(
    '%s',
    (name) => {
      expectCase(sen08, name, k(name.replace('k ', '').replace('|', '')));
    },
  );

  test('a series that starts with failures is the mirror image', () => {
    for (const row of sen08.data.rows) {
      const mirrored = [...(row.prefix + row.tail)].map((letter) => (letter === 'O' ? 'X' : 'O')).join('');
      expect(k(mirrored)).toBeCloseTo(-row.k_ML, 8);
    }
  });

  test('the worked example: a last level of 0.602 at steps of 0.301', () => {
    const drops = series('OXXOXO');
    const last = drops.at(-1)!.level;
    const { location } = smallSampleMedian(drops, { origin: 0.602 - 0.301 * last, step: 0.301 })!;
    // 0.831 has three digits; the example is 0.602 + 0.831·0.301.
    expect(Math.abs(location - 0.852131)).toBeLessThan(0.0005 * 0.301 + 1e-6);
  });
});

test('nothing can be said before both outcomes have been seen', () => {
  expect(smallSampleMedian(series('OOO'), { origin: 0, step: 1 })).toBeNull();
  expect(smallSampleMedian(series('XX'), { origin: 0, step: 1 })).toBeNull();
  expect(smallSampleMedian([], { origin: 0, step: 1 })).toBeNull();
});
