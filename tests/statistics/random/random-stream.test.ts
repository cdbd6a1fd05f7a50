import { describe, expect, it } from 'vitest';
import { normal } from '../../../src/statistics/laws/normal.ts';
import { philox } from '../../../src/statistics/random/philox.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';

const draw = (count: number, next: () => number) => Array.from({ length: count }, next);

describe('random stream', () => {
  it('is the counter generator keyed by seed, its upper counter words the index', () => {
    const stream = randomStream(2 ** 33 + 5, 2 ** 34 + 7);
    const out = new Uint32Array(4);
    philox(Uint32Array.of(0, 0, 7, 4), 5, 2, out);
    const second = new Uint32Array(4);
    philox(Uint32Array.of(1, 0, 7, 4), 5, 2, second);
    expect(draw(8, stream.word)).toEqual([...out, ...second]);
  });

  it('gives the same numbers however the streams are shared out', () => {
    const whole = draw(6, () => 0).map((_, index) => draw(50, randomStream(1, index).normal));
    const shared = [5, 2, 0, 4, 1, 3].map(
      (index) => [index, draw(50, randomStream(1, index).normal)] as const,
    );
    for (const [index, numbers] of shared) expect(numbers).toEqual(whole[index]);
    expect(whole[0]).not.toEqual(whole[1]);
    expect(draw(50, randomStream(2, 0).normal)).not.toEqual(whole[0]);
  });

  it('is uniform and normal (Kolmogorov–Smirnov at 1e-4: D√n < 2.22)', () => {
    const n = 20_000;
    const distance = (numbers: number[], cdf: (x: number) => number) =>
      numbers
        .toSorted((a, b) => a - b)
        .reduce((most, x, i) => Math.max(most, Math.abs(cdf(x) - i / n), Math.abs(cdf(x) - (i + 1) / n)), 0);
    expect(distance(draw(n, randomStream(3).uniform), (u) => u) * Math.sqrt(n)).toBeLessThan(2.22);
    expect(distance(draw(n, randomStream(4).normal), normal.cdf) * Math.sqrt(n)).toBeLessThan(2.22);
    // First numbers of streams that follow one another: what a study of many short tests draws.
    const firsts = draw(n, () => 0).map((_, index) => randomStream(5, index).uniform());
    expect(distance(firsts, (u) => u) * Math.sqrt(n)).toBeLessThan(2.22);
  });

  it('does not follow its neighbour stream', () => {
    const a = randomStream(6, 0);
    const b = randomStream(6, 1);
    const n = 20_000;
    const mean = draw(n, () => a.normal() * b.normal()).reduce((sum, x) => sum + x) / n;
    expect(Math.abs(mean) * Math.sqrt(n)).toBeLessThan(4);
  });

  it('refuses a seed that is no whole number', () => {
    expect(() => randomStream(-1)).toThrow(/seed must be a whole number/);
    expect(() => randomStream(1, 0.5)).toThrow(/stream index must be a whole number/);
  });
});
