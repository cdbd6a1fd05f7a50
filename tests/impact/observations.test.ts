import { describe, expect, it } from 'vitest';
import { observe } from '../../src/impact/observations.ts';
import type { Drop } from '../../src/logs/drop.ts';
import stepToFailure from '../reference/sen-29/SEN-29-step-to-failure-tyre-synthetic.json' with {
  type: 'json',
};
import { changed, dropOf, logOf, replayed, risesOf, risingProtocol, upAndDownProtocol } from './invented.ts';

// What an outcome says of a strength: CONTRACT ("censored", "rules of the methods") and TRADE practice:
// a failed invalid hit leaves a specimen right-censored at its last valid survived height. Common practice, no source.

const byHeight = (drop: Drop) => drop.height;

describe('observations of single looks', () => {
  it('are (−∞, h] for a failure and (h, ∞) for a survival', () => {
    const seen = observe(replayed(upAndDownProtocol(), logOf('500x 475o 500x')), byHeight);
    expect(seen.observations.map(({ lower, upper }) => [lower, upper])).toEqual([
      [-Infinity, 500],
      [475, Infinity],
      [-Infinity, 500],
    ]);
    expect(seen).toMatchObject({ specimens: 3, drops: 3, censored: null, mostDrops: 1 });
  });

  it('leave out what does not count, and take the unexplained back in the variant', () => {
    const drops = changed(logOf('500x 475o 475x 500x 475o 500x 475o'), {
      3: { valid: false, reason: 'DROP-16' },
      6: { valid: false },
    });
    const result = replayed(upAndDownProtocol(), drops);
    expect(observe(result, byHeight).drops).toBe(5);
    expect(observe(result, byHeight, 'with-unexplained-exclusions').drops).toBe(6);
  });

  it('count repeat looks at one specimen', () => {
    const protocol = upAndDownProtocol({
      sites: { perSpecimen: 4, spacing: null, each: 'new-spot', avoid: [] },
      afterFailure: 'new-site',
    });
    const drops = logOf('500x 475o 500x 475o', (index) => ({ specimen: index < 3 ? 'A' : 'B' }));
    expect(observe(replayed(protocol, drops), byHeight)).toMatchObject({
      specimens: 2,
      drops: 4,
      mostDrops: 3,
    });
  });
});

describe('observations of rises', () => {
  const rise = (
    text: string,
    changes: Record<number, Partial<Drop>> = {},
    limits = { min: null, max: 425 as number | null },
  ) => {
    const result = replayed(risingProtocol({ limits }), changed(risesOf(text), changes));
    const seen = observe(result, byHeight);
    return {
      ends: seen.observations.map(({ lower, upper }) => [lower, upper]),
      censored: seen.censored,
      result,
      seen,
    };
  };

  it('are (last survived, failed], open where the first hit fails or the top survives', () => {
    const { ends, censored } = rise('350o 375o 400x / 350x / 350o 375o 400o 425o');
    expect(ends).toEqual([
      [375, 400],
      [-Infinity, 350],
      [425, Infinity],
    ]);
    expect(censored).toBe(2);
  });

  it('end at the last valid survival where the failing hit was invalid', () => {
    const { ends, censored } = rise('350o 375o 400x / 350o 375x', { 4: { valid: false, reason: 'DROP-42' } });
    expect(ends).toEqual([
      [375, Infinity],
      [350, 375],
    ]);
    expect(censored).toBe(1);
  });

  it('do not use an invalid survival', () => {
    expect(rise('350o 375o 375o 400x', { 3: { valid: false, reason: 'DROP-16' } }).ends).toEqual([
      [375, 400],
    ]);
    expect(rise('350o 375o 400x', { 3: { outcome: 'not-evaluable' } }).ends).toEqual([[350, 400]]);
  });

  it('keep the highest survival where the height was lowered', () => {
    expect(rise('350o 375o 350o 375o 400x').ends).toEqual([[375, 400]]);
  });

  it('close nothing above where a specimen failed below a height that it had survived', () => {
    const { ends, seen } = rise('350o 375o 400o 375x');
    expect(ends).toEqual([[350, Infinity]]);
    expect(seen.observations[0]!.why).toContain('had survived');
    // At the same height as well: neither reading closes the interval.
    expect(rise('350o 375o 400o 400x').ends).toEqual([[375, Infinity]]);
  });

  it('ignore rows after the failure', () => {
    expect(rise('350o 375x 400o 425o').ends).toEqual([[350, 375]]);
  });

  it('give one observation for each site where each is a series', () => {
    const protocol = risingProtocol({
      sites: { perSpecimen: 2, spacing: 90, each: 'series-per-site', avoid: [] },
      afterFailure: 'new-site',
    });
    const drops = risesOf('350o 375x 350o 375o 400x', (index) => ({ site: index < 2 ? 0 : 180 }));
    const seen = observe(replayed(protocol, drops), byHeight);
    expect(seen.observations.map(({ lower, upper }) => [lower, upper])).toEqual([
      [350, 375],
      [375, 400],
    ]);
    expect(seen.specimens).toBe(1);
  });

  it('leave out drops without a measure', () => {
    const result = replayed(upAndDownProtocol(), logOf('500x 475o 500x'));
    expect(observe(result, (drop) => (drop.line === 3 ? null : drop.height)).drops).toBe(2);
  });
});

describe('a self-made rising test (SEN-29)', () => {
  it('becomes the intervals that its description gives', () => {
    const { first_fail, start, step, rig_max } = stepToFailure.data;
    const drops: Drop[] = [];
    for (const [index, fails] of first_fail.entries()) {
      for (let height = start; height <= (fails ?? rig_max); height += step) {
        const outcome = height === fails ? 'failed' : 'survived';
        drops.push(dropOf({ height, outcome, specimen: `S${index}`, line: drops.length + 2 }));
      }
    }
    const protocol = risingProtocol({
      start,
      step: { kind: 'additive', size: step },
      limits: { min: null, max: rig_max },
    });
    const seen = observe(replayed(protocol, drops), byHeight);
    // rule: "fail at 300 = left-censored (<=300); null = survived 600 (right-censored)".
    expect(seen.observations.map(({ lower, upper }) => [lower, upper])).toEqual(
      first_fail.map((fails) => {
        if (fails === null) return [rig_max, Infinity];
        return [fails === start ? -Infinity : fails - step, fails];
      }),
    );
    expect(seen.censored).toBe(2);
  });
});
