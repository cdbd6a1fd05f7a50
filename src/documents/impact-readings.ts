import { quote } from '../problem/echo.ts';
import { type Reading, readQuantity } from '../quantity/quantity.ts';
import { type Field, reading, wrong } from './fields.ts';
import type { Sites, Step } from './kinds.ts';
import { eitherPattern, quantityPattern } from './pattern.ts';

/** What a protocol varies: heights in mm, or masses in kg. */
export type Unit = 'mm' | 'kg';

const STEP = 'a height such as "25 mm", or a share of the level below such as "5 %"';

export const step = (unit: Unit): Field<Step> =>
  reading(
    'From one level to the next: a length (a mass, with vary: mass), or a share of the level below (5 %).',
    STEP,
    () => ({
      pattern: ['mm', 'kg', '1'].map((name) => quantityPattern(name, 'none')).reduce(eitherPattern),
    }),
    (text) => readStep(text, unit),
  );

const STRETCH = 'an angle with its half width, such as "0 deg ± 20 deg"';

export const stretch = (): Field<Sites['avoid'][number]> =>
  reading(
    'A stretch that may not be hit.',
    STRETCH,
    () => ({ pattern: quantityPattern('deg', 'required') }),
    readStretch,
  );

const DAMAGE = 'a share such as "1 %", or "estimated"';

export const damagePerHit = (): Field<number | 'estimated'> =>
  reading(
    'Share of its strength that each hit takes from a specimen, such as 1 %; "estimated" where two starts or steps allow it. Without it none is assumed.',
    DAMAGE,
    () => ({ pattern: eitherPattern('^estimated$', quantityPattern('1', 'none')) }),
    readDamage,
  );

function readDamage(text: string): Reading<number | 'estimated'> {
  if (text.trim() === 'estimated') return { ok: true, value: 'estimated' };
  const share = readQuantity(text, '1');
  if (!share.ok) return share;
  const { value, tolerance } = share.value;
  if (tolerance !== null || !(value >= 0 && value < 0.5))
    return wrong(`found ${quote(text)}, expected ${DAMAGE}, from 0 % to below 50 %`);
  return { ok: true, value };
}

function readStep(text: string, unit: Unit): Reading<Step> {
  const isRatio = text.trim().endsWith('%');
  const size = readQuantity(text, isRatio ? '1' : unit);
  if (!size.ok) return size;
  if (size.value.tolerance)
    return wrong(`found ${quote(text)}, expected a step without a tolerance; remove it`);
  const { value } = size.value;
  if (!(value > 0))
    return wrong(`found ${quote(text)}, expected a step above nought; write it without a sign`);
  return { ok: true, value: isRatio ? { kind: 'ratio', ratio: value } : { kind: 'additive', size: value } };
}

function readStretch(text: string): Reading<Sites['avoid'][number]> {
  const angle = readQuantity(text, 'deg');
  if (!angle.ok) return angle;
  const { tolerance, value } = angle.value;
  if (tolerance?.kind !== 'absolute') return wrong(`found ${quote(text)}, expected ${STRETCH}`);
  return { ok: true, value: { center: value, half: tolerance.value } };
}
