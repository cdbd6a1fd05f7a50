import { expect, test } from 'vitest';
import { runRulesLength } from '../../../src/statistics/control-chart/run-rule-length.ts';
import {
  describeRule,
  nelsonRules,
  type RunRule,
  signalsOf,
  westernElectricRules,
} from '../../../src/statistics/control-chart/run-rules.ts';
import reference from '../../reference/ctl-07/CTL-07-run-rules.json' with { type: 'json' };
import { expectWhole, titleOf } from '../../reference/published.ts';

type OneSide = RunRule & { kind: 'one-side' };
const { WE1, WE2, WE3, WE4 } = westernElectricRules as Record<string, OneSide>;

test(titleOf(reference), () => {
  // WE1 to WE3 are N1, N5 and N6; the case lists them once.
  const rules = Object.entries({ ...nelsonRules, WE4: westernElectricRules.WE4 });
  const found: Record<string, unknown> = {};
  for (const [name, z] of Object.entries(reference.data.sequences_z)) {
    const signals = rules.map(([rule, one]) => [rule, signalsOf(one, z).map((at) => at + 1)] as const);
    found[`sequence ${name}: all signals`] = Object.fromEntries(signals.filter(([, at]) => at.length > 0));
  }
  found['ARL0 with rule 1 + 2of3'] = runRulesLength([WE1!, WE2!], 0);
  found['ARL0 with rule 1 + 4of5'] = runRulesLength([WE1!, WE3!], 0);
  found['ARL0 with rule 1 + 8 in a row'] = runRulesLength([WE1!, WE4!], 0);
  found['ARL0 with rule 1 + 2of3+4of5+8 in a row'] = runRulesLength([WE1!, WE2!, WE3!, WE4!], 0);
  expectWhole(reference, found);
});

// Champ & Woodall (1987), table (from memory), by the exact chain: 225.44, 166.05, 152.73, 91.75.
test.each([
  [[WE1!, WE2!], 225.44],
  [[WE1!, WE3!], 166.05],
  [[WE1!, WE4!], 152.73],
  [[WE1!, WE2!, WE3!, WE4!], 91.75],
])('the exact chain gives every printed digit (%#)', (rules, printed) => {
  expect(runRulesLength(rules, 0)).toBeCloseTo(printed, 2);
});

test('a point on a line belongs to the inner zone', () => {
  expect(signalsOf(nelsonRules.N1, [3])).toEqual([]);
  expect(signalsOf(nelsonRules.N5, [2, 2, 2])).toEqual([]);
  expect(signalsOf(nelsonRules.N2, new Array(9).fill(0))).toEqual([]);
  expect(signalsOf(nelsonRules.N3, [1, 1, 1, 1, 1, 1])).toEqual([]);
  expect(describeRule(nelsonRules.N5)).toBe('2 of 3 beyond 2 sigma on one side');
});
