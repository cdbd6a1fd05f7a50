import { expect, test } from 'vitest';
import { kaplanMeier, survivalLimits } from '../../../src/statistics/turnbull/kaplan-meier.ts';
import km01 from '../../reference/km-01/KM-01-aml.json' with { type: 'json' };

const lives = ({ t, s }: { t: number[]; s: number[] }) => t.map((time, i) => ({ time, failed: s[i] === 1 }));
const curves = {
  Maintained: kaplanMeier(lives(km01.data.maintained)),
  Nonmaintained: kaplanMeier(lives(km01.data.nonmaintained)),
};

test('KM-01 (data and result found): survival and Greenwood standard errors', () => {
  let checked = 0;
  for (const { name, value } of km01.expected) {
    const match = /^(Maintained|Nonmaintained) (S|Greenwood se)\((\d+)\)/.exec(name);
    if (match === null) continue;
    const step = curves[match[1] as keyof typeof curves].find((s) => s.time === Number(match[3]))!;
    const found = match[2] === 'S' ? step.survival : step.standardError!;
    expect(Math.abs(found - value), name).toBeLessThanOrEqual(1e-9 * Math.max(1, value));
    checked++;
  }
  expect(checked).toBe(31);
});

test('KM-01 (found): limits on the log scale', () => {
  const z = 1.959963984540054;
  const at = (time: number) => survivalLimits(curves.Maintained.find((s) => s.time === time)!, z)!;
  const expected = (name: string) => km01.expected.find((e) => e.name === name)!.value;
  expect(at(9).lower).toBeCloseTo(expected('Maintained lower 95 % log limit at 9'), 7);
  expect(at(48).lower).toBeCloseTo(expected('Maintained lower at 48'), 7);
  expect(at(48).upper).toBeCloseTo(expected('Maintained upper at 48'), 7);
});

test('KM-01: once none survive there is no standard error', () => {
  expect(curves.Nonmaintained.at(-1)).toMatchObject({ time: 45, survival: 0, standardError: null });
  expect(survivalLimits(curves.Nonmaintained.at(-1)!, 1.96)).toBeNull();
});
