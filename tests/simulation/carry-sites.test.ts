import { describe, expect, it } from 'vitest';
import { emptyTrials } from '../../src/simulation/carry-out.ts';
import { carrying } from '../../src/simulation/carry-steps.ts';
import { levelTable } from '../../src/simulation/level-table.ts';
import { rises } from '../../src/simulation/sampling.ts';
import { tyresOf } from '../../src/simulation/strength.ts';
import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { designWith, simulated } from './designs.ts';

// CONTRACT: series-per-site makes each site a series of its own on the same specimen.
const SITES = { perSpecimen: 3, spacing: 90, each: 'series-per-site', avoid: [] } as const;
const STRONG = { law: 'normal', median: 600, spread: 30, between: 1, damage: 0, anyOffset: false } as const;

function carried(...[changes, file]: Parameters<typeof designWith>) {
  const design = designWith({ start: 580, step: { kind: 'additive', size: 20 }, ...changes }, file);
  const levels = levelTable(1, 'identity');
  const trials = emptyTrials();
  expect(carrying(design)(tyresOf(STRONG, null, 1, 0), true, levels, randomStream(3), trials)).toBe(true);
  return { levels, trials, heights: [...trials.level.slice(0, trials.size)].map((at) => levels.level[at]!) };
}

describe('tests with a series for each site', () => {
  it('start each site again, on the same tyre, up and down', () => {
    const stop = { drops: 8, specimens: 2 };
    const { trials, heights } = carried({ sites: SITES, afterFailure: 'new-site', stop });
    // 2 tyres of 3 sites of 8 drops.
    expect([trials.size, trials.specimens]).toEqual([48, 2]);
    for (let series = 0; series < 6; series++) expect(heights[8 * series]).toBe(580);
    expect([...trials.specimen.slice(0, 48)]).toEqual(
      Array.from({ length: 48 }, (_, i) => Math.floor(i / 24)),
    );
    for (let i = 1; i < 48; i++) {
      if (i % 8 > 0) expect(heights[i]! - heights[i - 1]!).toBe(trials.failed[i - 1] ? -20 : 20);
    }
  });

  it('end a tyre at its failure where that retires it', () => {
    const { trials } = carried({ sites: SITES, afterFailure: 'retire', stop: { drops: 8, specimens: 5 } });
    for (let i = 0; i + 1 < trials.size; i++) {
      if (trials.failed[i]) expect(trials.specimen[i + 1]).toBe(trials.specimen[i]! + 1);
    }
    expect(trials.specimens).toBe(5);
  });

  it('give a rise for each site: a tyre of one threshold has the same at each', () => {
    const rising = [
      { sites: SITES, afterFailure: 'new-site', stop: { specimens: 4 }, limits: { min: null, max: 620 } },
      'pinch-rising-height',
    ] as const;
    const { trials, levels } = carried(...rising);
    const { sample } = rises('identity')(trials, levels);
    const counts = [...sample.count.slice(0, sample.size)];
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(12);
    for (const count of counts) expect(count % 3).toBe(0);
  });

  it('are simulated to the end, estimates and all', async () => {
    const design = designWith({
      start: 580,
      step: { kind: 'additive', size: 20 },
      sites: SITES,
      afterFailure: 'new-site',
      stop: { drops: 12, specimens: 6 },
    });
    const point = await simulated(design, { ...STRONG, between: 0.5 }, 200);
    expect(point.drops.mean.value).toBe(216);
    const [median] = point.estimates;
    expect(Math.abs(median!.bias!.value)).toBeLessThan(4 * median!.bias!.error + 1);
  });
});
