import { expect, test } from 'vitest';
import { logRankTest } from '../../../src/statistics/life/log-rank.ts';
import { normalCritical } from '../../../src/statistics/likelihood/critical.ts';
import { kaplanMeier, survivalLimits } from '../../../src/statistics/turnbull/kaplan-meier.ts';
import reference from '../../reference/km-01/KM-01-aml.json' with { type: 'json' };
import r from '../../reference/life/survival.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

const lives = ({ t, s }: { t: number[]; s: number[] }) => t.map((time, i) => ({ time, failed: s[i] === 1 }));

test(titleOf(reference), () => {
  const groups = [lives(reference.data.maintained), lives(reference.data.nonmaintained)] as const;
  const found: Record<string, number | null> = {};
  const z = normalCritical(0.95, 2);
  for (const [name, group] of [
    ['Maintained', groups[0]],
    ['Nonmaintained', groups[1]],
  ] as const) {
    for (const step of kaplanMeier(group)) {
      found[`${name} S(${step.time}) n=${step.atRisk} d=${step.failures}`] = step.survival;
      if (step.standardError !== null) found[`${name} Greenwood se(${step.time})`] = step.standardError;
    }
  }
  const steps = kaplanMeier(groups[0]);
  const last = survivalLimits(steps.at(-1)!, z)!;
  found['Maintained lower 95 % log limit at 9'] = survivalLimits(steps[0]!, z)!.lower;
  found['Maintained lower at 48'] = last.lower;
  found['Maintained upper at 48'] = last.upper;
  const plain = logRankTest(groups);
  found['log-rank E maintained'] = plain.expected[0]!;
  found['log-rank E non-maintained'] = plain.expected[1]!;
  found['log-rank variance'] = plain.covariance[0]![0]!;
  found['log-rank chi-square'] = plain.statistic;
  found['log-rank p'] = plain.p;
  found['Peto-Peto (rho=1) chi-square'] = logRankTest(groups, 1).statistic;
  expectWhole(reference, found);
});

// tests/reference/scripts/life-survival.R: survdiff with three groups.
test('three groups as R has them', () => {
  const groups = r.groups.map(lives);
  const found = logRankTest(groups);
  expect(found.statistic).toBeCloseTo(r.chisq, 9);
  expect(found.degrees).toBe(2);
  expect(logRankTest(groups, 1).statistic).toBeCloseTo(r.chisqRho1, 9);
});

test('one group alone is refused', () => {
  expect(() => logRankTest([[{ time: 1, failed: true }]])).toThrow('two groups');
});
