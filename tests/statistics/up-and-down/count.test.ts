import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countUpAndDown, rarerEvent } from '../../../src/statistics/up-and-down/count.ts';
import { type LevelDrop, levelNumber } from '../../../src/statistics/up-and-down/grid.ts';
import { meanOfLevels } from '../../../src/statistics/up-and-down/mean-of-levels.ts';
import { expectCase, expectRelative, titleOf } from '../../reference/likelihood/case.ts';
import sen01 from '../../reference/sen-01/SEN-01-updown-bottle-staircase-1969.json' with { type: 'json' };
import sen02 from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import sen05 from '../../reference/sen-05/SEN-05-updown-tyre-energy-synthetic.json' with { type: 'json' };
import sen06 from '../../reference/sen-06/SEN-06-updown-degenerate-two-level.json' with { type: 'json' };
import sen09 from '../../reference/sen-09/SEN-09-mean-of-levels-identities.json' with { type: 'json' };

function dropsOn(levels: readonly number[], fail: readonly number[], step: number) {
  const grid = { origin: levels[0]!, step };
  const drops = levels.map((y, i) => ({ level: levelNumber(y, grid)!, failed: fail[i] === 1 }));
  expect(drops.every((drop) => drop.level !== null)).toBe(true);
  return { grid, drops };
}

test(titleOf(sen01), () => {
  const { levels, fail, step } = sen01.data;
  const { grid, drops } = dropsOn(levels, fail, step);
  const count = countUpAndDown(drops, grid)!;
  expectCase(sen01, 'n', drops.length);
  expectCase(sen01, 'failures', drops.filter((drop) => drop.failed).length);
  expect(count.event).toBe('failed');
  expect(sen01.expected.find((entry) => entry.name === 'DixonMood event used')?.value).toBe('fail');
  expectCase(sen01, 'DM N', count.N);
  expectCase(sen01, 'DM A', count.A);
  expectCase(sen01, 'DM B', count.B);
  expectCase(sen01, 'DM M=(NB-A^2)/N^2', count.M);
  expectCase(sen01, 'DM m (m)', count.mean);
  expectCase(sen01, 'DM s=1.62 d (M+0.029) (m)', count.spread);
  expect(count.spreadBy).toBe('count');
  expectCase(sen01, 'se(m) Dixon-Massey (6s+d)/(7 sqrt N)', count.meanError);
  expectCase(sen01, 'se(s) Dixon-Massey (1.1s+0.3s^2/d)/sqrt N', count.spreadError!);
  expectCase(
    sen01,
    'Brownlee-Hodges-Rosenblatt mean of levels 2..n+1',
    meanOfLevels(levels, sen01.data.next_level_would_be),
  );
  const passes = countUpAndDown(drops, grid, 'survived')!;
  expectCase(sen01, 'DM using passes instead: m', passes.mean);
  expectCase(sen01, 'DM using passes instead: s', passes.spread);
});

test(`${titleOf(sen02)}: levels equal on the log scale, heights as printed`, () => {
  const { height, fail, nominal_log10_step } = sen02.data;
  // The printed heights are rounded: 28.5, 32.0, 35.9, 40.3 for 28.50, 31.98, 35.88, 40.26.
  const { grid, drops } = dropsOn(height.map(Math.log10), fail, nominal_log10_step);
  const { N, A, B, mean, spread } = countUpAndDown(drops, grid)!;
  expect([N, A, B]).toEqual([11, 21, 51]);
  expectCase(sen02, 'Dixon-Mood (failures, N=11,A=21,B=51, grid log10 25.4 + 0.05 i): m, s', [mean, spread]);
  const other = countUpAndDown(drops, grid, 'survived')!;
  expect([other.N, other.A, other.B]).toEqual([14, 24, 56]);
  expectCase(sen02, 'Dixon-Mood with non-failures (N=14,A=24,B=56): m, s', [other.mean, other.spread]);
});

test(titleOf(sen05), () => {
  const { levels, fail, step, mass_kg, g } = sen05.data;
  const { grid, drops } = dropsOn(levels, fail, step);
  const count = countUpAndDown(drops, grid)!;
  expectCase(sen05, 'N (failures)', count.N);
  expectCase(sen05, 'A', count.A);
  expectCase(sen05, 'B', count.B);
  expectCase(sen05, 'M', count.M);
  expectCase(sen05, 'm mm', count.mean);
  expectCase(sen05, 's mm', count.spread);
  expectCase(sen05, 'se(m) mm', count.meanError);
  const survivals = countUpAndDown(drops, grid, 'survived')!;
  expectCase(sen05, 'with non-failures N=11,A=11,B=17: m, s', [survivals.mean, survivals.spread]);
  // Note of the case: the falling-mass form gives 21.0200 mm.
  expect(count.spreadFallingMass).toBeCloseTo(21.02, 10);
  // Energy in J is mass·g/1000 times the height in mm, levels included.
  const joule = (mass_kg * g) / 1000;
  const energy = countUpAndDown(drops, { origin: grid.origin * joule, step: step * joule })!;
  expectCase(sen05, 'mean failure energy J = 2*9.80665*0.440', energy.mean);
  expectCase(sen05, 's energy J', energy.spread);
});

test(titleOf(sen06), () => {
  const { levels, fail, step } = sen06.data;
  const { grid, drops } = dropsOn(levels, fail, step);
  const count = countUpAndDown(drops, grid)!;
  expectCase(sen06, 'DM m', count.mean);
  expectCase(sen06, 'DM M', count.M);
  expectCase(sen06, 'DM s raw (invalid, must be flagged)', count.spreadUnchecked);
  expectCase(sen06, 's fallback 0.53 d', count.spread);
  expect(count.spreadBy).toBe('constant');
  expect(count.spreadError).toBeNull();
});

test(titleOf(sen09), () => {
  const { bottle, tyre } = sen09.data;
  const mean = ({ levels, fail, step }: typeof bottle) =>
    meanOfLevels(levels, levels.at(-1)! + (fail.at(-1) === 1 ? -step : step));
  expectCase(sen09, 'BHR = mean of levels 2..n+1 (the level that would come next included): bottle, tyre', [
    mean(bottle),
    mean(tyre),
  ]);
  const both = ({ levels, fail, step }: typeof bottle) => {
    const { grid, drops } = dropsOn(levels, fail, step);
    return [countUpAndDown(drops, grid, 'failed')!, countUpAndDown(drops, grid, 'survived')!] as const;
  };
  expectCase(
    sen09,
    'Dixon-Mood m (event E) == mean over trials with event E of (level_t + level_{t+1})/2 : bottle fail, pass; tyre fail, nofail',
    [...both(bottle), ...both(tyre)].map((count) => count.mean),
  );
  const [f, s] = both(bottle);
  expectCase(sen09, 'N_x m_x + N_o m_o = n*BHR - (L_{n+1}-L_1)/2 : bottle', f.N * f.mean + s.N * s.mean);
  const early = {
    levels: [0, 0.3, 0.6, ...bottle.levels],
    fail: [0, 0, 0, ...bottle.fail],
    step: bottle.step,
  };
  const { grid, drops } = dropsOn(early.levels, early.fail, early.step);
  const first = countUpAndDown(drops, grid)!;
  expectCase(
    sen09,
    'adding passes below the first level (0,.3,.6) leaves Dixon-Mood m,s unchanged while failures stay the rarer event',
    [first.mean, first.spread],
  );
  const mirrored = dropsOn(
    bottle.levels.map((level) => 10 - level),
    bottle.fail.map((k) => 1 - k),
    bottle.step,
  );
  const mirror = countUpAndDown(mirrored.drops, mirrored.grid)!;
  expectCase(sen09, 'reflection: levels -> 10-level, fail<->pass: m -> 10-m, s same', [
    mirror.mean,
    mirror.spread,
  ]);
  const mm = dropsOn(
    bottle.levels.map((level) => 1000 * level),
    bottle.fail,
    300,
  );
  const scaled = countUpAndDown(mm.drops, mm.grid)!;
  expectCase(sen09, 'scale: m -> mm multiplies m and s by 1000', [scaled.mean, scaled.spread]);
});

/** An up-and-down path of any outcomes: one down after a failure, one up after a survival. */
const path = fc.array(fc.boolean(), { minLength: 1, maxLength: 60 }).map((outcomes) => {
  let level = 0;
  const drops: LevelDrop[] = [];
  for (const failed of outcomes) {
    drops.push({ level, failed });
    level += failed ? -1 : 1;
  }
  return { drops, next: level };
});

test('the identity of the three means holds on every path (Brownlee, Hodges and Rosenblatt; SEN-09)', () => {
  fc.assert(
    fc.property(path, ({ drops, next }) => {
      const grid = { origin: 450, step: 25 };
      const levels = drops.map((drop) => 450 + 25 * drop.level);
      const parts = (['failed', 'survived'] as const)
        .map((event) => countUpAndDown(drops, grid, event))
        .reduce((sum, count) => sum + (count ? count.N * count.mean : 0), 0);
      const after = 450 + 25 * next;
      expect(parts).toBeCloseTo(drops.length * meanOfLevels(levels, after) - (after - 450) / 2, 6);
    }),
    { seed: 9 },
  );
});

test('an event that never occurred has no count; without a choice the rarer is taken', () => {
  const drops = [0, 1, 2].map((level) => ({ level, failed: false }));
  expect(rarerEvent(drops)).toBe('failed');
  expect(countUpAndDown(drops, { origin: 0, step: 1 })).toBeNull();
  expect(countUpAndDown([], { origin: 0, step: 1 })).toBeNull();
  expect(rarerEvent([{ level: 0, failed: true }])).toBe('survived');
});

test('off the grid is no level', () => {
  const grid = { origin: 400, step: 25 };
  expect(levelNumber(451, grid)).toBe(2);
  expect(levelNumber(375, grid)).toBe(-1);
  expect(levelNumber(410, grid)).toBeNull();
  expect(levelNumber(410, grid, 0.5)).toBe(0);
});

test('a mean of levels needs a drop', () => {
  expect(() => meanOfLevels([], 3)).toThrow(RangeError);
  expectRelative(meanOfLevels([400], 425), 425, 0);
});
