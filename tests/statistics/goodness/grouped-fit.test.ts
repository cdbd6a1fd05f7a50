import { expect, test } from 'vitest';
import { groupedFit } from '../../../src/statistics/goodness/grouped-fit.ts';
import type { LawName } from '../../../src/statistics/law.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import reference from '../../reference/goodness/grouped.json' with { type: 'json' };

// tests/reference/scripts/goodness.R: glm at epsilon 1e-14; the fitted law is R's, so that only the sums are under test.
test.each(reference.cases)('$name, $law: deviance and Pearson (R script, computed)', (c) => {
  const responses = c.levels.map((level, i) => ({ level, failures: c.failures[i]!, drops: c.drops[i]! }));
  const { standard } = laws[c.law as LawName];
  const { value } = groupedFit(responses, (level) => standard.cdf((level - c.location) / c.scale));
  expect(Math.abs(value!.deviance / c.deviance - 1)).toBeLessThan(1e-9);
  expect(Math.abs(value!.pearson / c.pearson - 1)).toBeLessThan(1e-9);
  expect(value!.degrees).toBe(c.degrees);
  if (c.below1 > 0 || c.below5 > (2 * c.levels.length) / 5) {
    expect(value).toMatchObject({ pDeviance: null, pPearson: null });
    expect(value!.why).toContain(`${c.below5} of the ${2 * c.levels.length} expected numbers`);
    expect(value!.why).toContain(`(${c.below1} below 1)`);
  } else {
    expect(value!.pDeviance).toBeCloseTo(c.pDeviance, 8);
    expect(value!.pPearson).toBeCloseTo(c.pPearson, 8);
  }
});

test('both ways occur among the cases', () => {
  const refused = reference.cases.filter((c) => c.below1 > 0 || c.below5 > (2 * c.levels.length) / 5);
  expect(refused.length).toBeGreaterThan(0);
  expect(refused.length).toBeLessThan(reference.cases.length);
});

test('two levels leave nothing to test', () => {
  const two = [1, 2].map((level) => ({ level, failures: level, drops: 30 }));
  expect(groupedFit(two, () => 0.5).why).toBe(
    '2 levels leave nothing to test beside a location and a spread',
  );
});
