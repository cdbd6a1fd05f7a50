// Golden texts of invented results: what they show was read and judged by eye; a change of wording changes the file.
import { describe, expect, it } from 'vitest';
import { analysisText } from '../../../src/reports/text/analysis.ts';
import type { ImpactResult } from '../../../src/result/analysis.ts';
import { long, passing, rising, undecided } from '../results.ts';

const page = { version: '0.1.0', width: 80, colour: 0, unicode: true } as const;
const text = (result: ImpactResult) => analysisText(result, page);
/** The text as one line, for sentences that the page breaks. */
const flowing = (result: ImpactResult) => text(result).replaceAll(/\s+/gu, ' ');

describe('analysisText', () => {
  it.each(Object.entries({ passing, undecided, rising, long }))('%s', async (name, result) => {
    await expect(text(result)).toMatchFileSnapshot(`golden/${name}.txt`);
  });

  it('in ASCII on a narrow page', async () => {
    const narrow = analysisText(passing, { ...page, width: 60, unicode: false });
    expect(narrow).not.toMatch(/[^\n -~]/u);
    await expect(narrow).toMatchFileSnapshot('golden/narrow-ascii.txt');
  });

  it('opens with the finding in one sentence', () => {
    expect(flowing(passing)).toMatch(
      /^Median failure energy 40\.19 J, 95 % interval 38\.92 to 41\.52 J, from 30 drops on 30 tyres\. /,
    );
  });

  it('says that drops on one tyre are repeat looks, but of rising height that it is bound to its protocol', () => {
    expect(flowing(undecided)).toContain('12 drops on 3 tyres are repeat looks at the same tyres');
    expect(flowing(passing)).not.toContain('repeat looks');
    expect(flowing(rising)).toContain('for this start and step only');
    expect(flowing(rising)).not.toContain('repeat looks');
  });

  it('says open ends in words', () => {
    expect(flowing(undecided)).toContain('from 38.1 J, no upper limit');
  });

  it('stays short for a hundred thousand drops', () => {
    expect(text(long).split('\n').length).toBeLessThan(100);
  });

  it('says why there is no verdict', () => {
    expect(text(rising)).toContain('Verdict: none. No specification was given to judge against.');
    const why = 'more than a fifth of the drops is out';
    const broken = {
      ...rising,
      estimates: [],
      conformance: { ...rising.conformance, status: 'invalid' as const, why },
    };
    expect(flowing(broken)).toMatch(/^No estimate: more than a fifth of the drops is out\. /);
    expect(text(broken)).toContain('Verdict: none. More than a fifth of the drops is out.');
  });
});
