// By hand from N = n·(w/δ)²; the square-root law of a standard error is common practice, no source.
import { describe, expect, it } from 'vitest';
import { moreSpecimens } from '../../src/verdict/more.ts';
import { atLeast45, evidence } from './criteria.ts';

describe('moreSpecimens', () => {
  it('brings the lower bound up to a limit below the estimate: 30·(3/2)² − 30 = 37.5', () => {
    const more = moreSpecimens(atLeast45, evidence({ estimate: 47, lower: 44, upper: 49 }));
    expect(more).toEqual({
      specimens: 38,
      why: 'about 38 more tyres would decide if the estimate stays where it is',
    });
  });

  it('brings the upper bound down to a limit above the estimate: 16·(4/2)² − 16 = 48', () => {
    const given = evidence({ estimate: 43, lower: 40, upper: 47, specimens: 16 });
    expect(moreSpecimens(atLeast45, given).specimens).toBe(48);
  });

  it('works out a missing bound from the standard error: 30·(1.645·2/2)² − 30 = 51.2', () => {
    const given = evidence({ estimate: 47, lower: null, upper: null, standardError: 2 });
    expect(moreSpecimens(atLeast45, given).specimens).toBe(52);
  });

  it('needs both bounds inside a range, so the nearer end decides: 10·(3/1)² − 10 = 80', () => {
    const within = { ...atLeast45, limit: { within: { lower: 40, upper: 48 }, unit: 'J' } };
    const given = evidence({ estimate: 47, lower: 44, upper: 50, specimens: 10 });
    expect(moreSpecimens(within, given).specimens).toBe(80);
  });

  it('rounds what it cannot know: 30·(3/1.3)² − 30 = 129.8 is about 130', () => {
    const more = moreSpecimens(atLeast45, evidence({ estimate: 46.3, lower: 43.3 }));
    expect(more.why).toMatch(/^about 130 more tyres/);
  });

  it('names no number beyond 500', () => {
    for (const estimate of [45.1, 45]) {
      const more = moreSpecimens(atLeast45, evidence({ estimate, lower: 42, upper: 48 }));
      expect(more.specimens).toBeNull();
      expect(more.why).toMatch(/^more than 500 more tyres .* too near the limit$/);
    }
  });

  it('says what is wanting where there is no estimate or no uncertainty', () => {
    expect(moreSpecimens(atLeast45, evidence({ estimate: null })).why).toMatch(/without an estimate/);
    const bare = evidence({ lower: null, upper: null, standardError: null });
    expect(moreSpecimens(atLeast45, bare)).toMatchObject({ specimens: null });
  });

  it('asks at least for the specimens that the criterion asks for', () => {
    const criterion = { ...atLeast45, minSpecimens: 31 };
    expect(moreSpecimens(criterion, evidence({ lower: 46 })).why).toMatch(/^1 more tyre would/);
    expect(moreSpecimens({ ...atLeast45, minSpecimens: 100 }, evidence({ lower: 44 })).specimens).toBe(70);
  });
});
