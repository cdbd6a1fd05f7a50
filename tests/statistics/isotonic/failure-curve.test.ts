import { expect, test } from 'vitest';
import { curveQuantile } from '../../../src/statistics/isotonic/curve-quantile.ts';
import { centredIsotonicCurve, isotonicCurve } from '../../../src/statistics/isotonic/failure-curve.ts';
import { spearmanKarber } from '../../../src/statistics/spearman-karber/spearman-karber.ts';
import { expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen01 from '../../reference/sen-01/SEN-01-updown-bottle-staircase-1969.json' with { type: 'json' };
import sen02 from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };
import sen22 from '../../reference/sen-22/SEN-22-isotonic-and-centred.json' with { type: 'json' };
import sen24 from '../../reference/sen-24/SEN-24-quantal-turbine-wheels.json' with { type: 'json' };

function responses(set: { x: number[]; r: number[]; n: number[] }) {
  return set.x.map((level, i) => ({ level, failures: set.r[i]!, drops: set.n[i]! }));
}

function near(found: readonly number[], expected: readonly number[], tolerance: number) {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(tolerance);
}

// The pooled shares are standard; the centred rule is from memory of Oron and Flournoy 2017, its values computed by two
// implementations and, for the violation set, by hand.
for (const [name, set] of Object.entries(sen22.data.sets)) {
  test(`SEN-22 (${name}; computed twice, centred rule from memory): shares and medians`, () => {
    const plain = isotonicCurve(responses(set));
    near(
      plain.map((c) => c.share),
      set.pava,
      1e-12,
    );
    near([curveQuantile(plain, 0.5).value!], [set.ir_median], 1e-8);
    const centred = centredIsotonicCurve(responses(set));
    near(
      centred.map((c) => c.level),
      set.cir_x,
      1e-12,
    );
    near(
      centred.map((c) => c.share),
      set.cir_p,
      1e-12,
    );
    near(
      centred.map((c) => c.drops),
      set.cir_w,
      0,
    );
    near([curveQuantile(centred, 0.5).value!], [set.cir_median], 1e-8);
  });
}

test('SEN-24 (data found, values computed twice): pooled shares of the turbine wheels', () => {
  const { hours100, cracked, not_cracked } = sen24.data;
  const curve = isotonicCurve(
    hours100.map((level, i) => ({ level, failures: cracked[i]!, drops: cracked[i]! + not_cracked[i]! })),
  );
  const expected = sen22.expected.find((e) => e.name.startsWith('turbine wheels'))!.value as number[];
  near(
    curve.map((c) => c.share),
    expected,
    1e-5,
  );
});

test('levels out of order or entered twice are put in order and joined', () => {
  const mixed = [
    { level: 2, failures: 1, drops: 2 },
    { level: 1, failures: 0, drops: 3 },
    { level: 2, failures: 1, drops: 2 },
  ];
  expect(isotonicCurve(mixed)).toEqual([
    { level: 1, share: 0, drops: 3 },
    { level: 2, share: 0.5, drops: 4 },
  ]);
});

test('ties at 0 and 1 keep their corners in the centred curve; ties between do not (the written rule)', () => {
  const centred = centredIsotonicCurve(
    [0, 0, 1, 1, 2, 2].map((failures, i) => ({ level: i, failures, drops: 2 })),
  );
  expect(centred.map((c) => c.level)).toEqual([0, 1, 2.5, 4, 5]);
});

/** Drops one by one, as levels with their failures. */
function grouped(levels: readonly number[], fail: readonly number[]) {
  const groups = new Map<number, { level: number; failures: number; drops: number }>();
  for (const [i, level] of levels.entries()) {
    const group = groups.get(level) ?? { level, failures: 0, drops: 0 };
    groups.set(level, group);
    group.drops += 1;
    group.failures += fail[i]!;
  }
  return [...groups.values()].sort((a, b) => a.level - b.level);
}

test(`${titleOf(sen01)}: isotonic median, mean by Spearman and Kärber`, () => {
  const responses = grouped(sen01.data.levels, sen01.data.fail);
  const { value } = curveQuantile(isotonicCurve(responses), 0.5);
  expectCase(sen01, 'isotonic (linear interpolation) median', value!);
  expectCase(sen01, 'Spearman-Karber (PAVA) mean on metres', spearmanKarber(responses).value!.mean);
});

test(`${titleOf(sen02)}: isotonic and centred isotonic median`, () => {
  const responses = grouped(sen02.data.height.map(Math.log10), sen02.data.fail);
  expectCase(sen02, 'isotonic median log10 (interpolated) / centred isotonic', [
    curveQuantile(isotonicCurve(responses), 0.5).value!,
    curveQuantile(centredIsotonicCurve(responses), 0.5).value!,
  ]);
});
