import { expect, test } from 'vitest';
import { pairedTest, pooledTest, welchTest } from '../../../src/statistics/comparison-tests/student.ts';
import { fisherLaw } from '../../../src/statistics/laws/fisher.ts';
import { variance } from '../../../src/statistics/summary/moments.ts';
import { expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen03 from '../../reference/sen-03/SEN-03-compare-two-rigs-2019.json' with { type: 'json' };

const { new: fresh, old, paired } = sen03.data;

test(`${titleOf(sen03)}: two rigs by their estimates`, () => {
  const welch = welchTest(fresh, old, 0.95);
  expectCase(sen03, 'mean difference new-old', welch.difference);
  expectCase(sen03, 'Welch 95% CI', [welch.lower, welch.upper]);
  expectCase(sen03, 'Welch p', welch.p);
  expectCase(sen03, 'Welch df', welch.degrees);
  const ratio = fisherLaw(fresh.length - 1, old.length - 1);
  const f = variance(fresh) / variance(old);
  expectCase(sen03, 'F-test p (two-sided variance ratio)', 2 * Math.min(ratio.cdf(f), ratio.sf(f)));
  const pooled = pooledTest(fresh, old, 0.95);
  expectCase(sen03, 'equal-variance t p (wrong choice; must NOT match paper)', pooled.p);
  expect(Math.abs(pooled.p - welch.p)).toBeGreaterThan(1e-6);
});

/** The value of each test's group: `1-4` are the first four. */
function byTest(groups: Readonly<Record<string, number>>): number[] {
  const ranges = Object.entries(groups).map(([tests, value]) => {
    const [from, to = from] = tests.split('-').map(Number) as [number, number?];
    return { from, to, value };
  });
  // A key that is a number comes first in an object, wherever it was written.
  ranges.sort((a, b) => a.from - b.from);
  return ranges.flatMap(({ from, to, value }) => Array.from({ length: to - from + 1 }, () => value));
}

test(`${titleOf(sen03)}: pairs, each against its reference`, () => {
  const above = (tests: readonly number[], references: readonly number[]) =>
    tests.map((value, i) => value - references[i]!);
  const found = pairedTest(
    above(paired.new_test, byTest(paired.new_ref_by_group)),
    above(paired.old_test, byTest(paired.old_ref_by_group)),
    0.95,
  );
  expectCase(sen03, 'paired mean difference', found.difference);
  expectCase(sen03, 'paired 95% CI', [found.lower, found.upper]);
  expectCase(sen03, 'paired p', found.p);
});
