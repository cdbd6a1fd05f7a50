import { expect, test } from 'vitest';
import { estimateDamage, whyDamageUntold } from '../../../src/statistics/specimen-effect/damage.ts';
import type { History } from '../../../src/statistics/specimen-effect/history.ts';
import glmer from '../../reference/specimen-effect/glmer.json' with { type: 'json' };

function series(start: number, step: number, hits: number): History {
  return Array.from({ length: hits }, (_, k) => ({
    level: start + k * step,
    failed: k === hits - 1,
    earlier: k,
  }));
}

test('one start and one step: height and hit number go together, equal steps or not', () => {
  expect(whyDamageUntold([series(350, 25, 6), series(350, 25, 8)])).toMatch(
    /a second start or step would settle it/,
  );
  const uneven = [350, 400, 425, 440].map((level, earlier) => ({ level, failed: level === 440, earlier }));
  expect(whyDamageUntold([uneven, uneven.slice(0, 3)])).toMatch(/height and number of hits go together/);
});

test('two starts or two steps are enough; one hit a specimen is not', () => {
  expect(whyDamageUntold([series(350, 25, 6), series(400, 25, 6)])).toBeNull();
  expect(whyDamageUntold([series(350, 25, 6), series(350, 50, 4)])).toBeNull();
  expect(whyDamageUntold([series(350, 25, 1)])).toMatch(/no specimen was hit twice/);
});

test('two starts that differ only so that height fixes the hit number by a line are not', () => {
  // 350, 375, … and 375, 400, … with the second tyre hit once before: the number is (height − 350)/25 throughout.
  const later = series(350, 25, 6).slice(1);
  expect(whyDamageUntold([series(350, 25, 6), later])).not.toBeNull();
});

// Invented data drawn with 1 % a hit (tests/reference/scripts/specimen-effect-glmer.R): a property, not a published number.
test('the damage that the data were drawn with lies in its interval, and that without damage does not', () => {
  const c = glmer.cases.find((g) => g.name.startsWith('4 rising-height series'))!;
  const histories = c.histories.map((h) =>
    h.map(([level, failed, earlier]) => ({ level: level!, failed: failed === 1, earlier: earlier! })),
  );
  const estimate = estimateDamage(histories.slice(0, 12), { scale: 'identity' });
  expect(estimate.kind).toBe('estimated');
  if (estimate.kind !== 'estimated') return;
  expect(estimate.lower).toBeGreaterThan(0);
  expect(estimate.lower).toBeLessThan(0.01);
  expect(estimate.upper).toBeGreaterThan(0.01);
});
