import { quote } from '../problem/echo.ts';
import { type Reading, readQuantity } from '../quantity/quantity.ts';
import { block, either, list, mapOf, optional } from './blocks.ts';
import { count, type Field, measure, name, prose, quantity, reading, share, word, wrong } from './fields.ts';
import type { Sites, Step } from './kinds.ts';
import { once } from './once.ts';
import { quantityPattern } from './pattern.ts';
import type { Fields, Whole } from './read-fields.ts';

export const METHODS = ['up-and-down', 'rising-height', 'fixed-level'] as const;
export const LAWS = ['normal', 'lognormal', 'logistic', 'weibull'] as const;
const AFTER_FAILURE = ['retire', 'new-site'] as const;

const afterFailure = (): Field<'retire' | 'new-site'> =>
  word(AFTER_FAILURE, 'What becomes of a specimen that failed: retired, or hit again at a new site.');

const stop = () =>
  block(
    {
      drops: optional(count('Valid drops after which the series ends.')),
      specimens: optional(count('Specimens after which the series ends.')),
      reversals: optional(count('Changes of direction after which an up-and-down series ends.')),
      rarer: optional(count('Go on after "drops" until the rarer of the two outcomes was seen this often.')),
      atMost: optional(count('Valid drops at which a series that "rarer" prolongs ends all the same.')),
    },
    'When a series ends: any of its counts, of valid drops. Without it the operator ends the series.',
    { minProperties: 1, dependencies: { rarer: ['drops'], atMost: ['rarer'] } },
  );

const sites = () =>
  block(
    {
      perSpecimen: optional(count('Hits that one specimen may take.')),
      spacing: optional(measure('deg', 'Angle between neighbouring sites.', { above: 0, atMost: 360 })),
      each: optional(
        word(
          ['same-spot', 'new-spot', 'series-per-site'],
          'Whether a specimen is hit at one place again and again, turned after every hit, or carries one series at each site.',
        ),
      ),
      avoid: optional(
        list(
          reading(
            'A stretch that may not be hit.',
            STRETCH,
            () => ({ pattern: quantityPattern('deg', 'required') }),
            readStretch,
          ),
          'Stretches that may not be hit, such as the valve and the joint of the casing.',
        ),
      ),
      afterFailure: optional(afterFailure()),
    },
    'Where on the tyre the mass may land; angles are counted from the valve.',
  );

/** The keys of an impact protocol. */
export const impactShape = once(() => ({
  format: word(['tirelab.protocol/1'], 'What this file is.'),
  kind: word(['impact'], 'A drop test; "endurance" is a drum test.'),
  id: name('Name of the protocol; results and specifications refer to it.'),
  version: name('Version of the protocol, as text: a change of method or levels is a new one.'),
  title: optional(prose('What the protocol is, for people.')),
  method: word(
    METHODS,
    'up-and-down: one step lower after a failure, higher after a survival. rising-height: one specimen is hit higher and higher until it fails. fixed-level: a set number of drops at each height.',
  ),
  failure: optional(prose('What counts as a failure, in words.')),
  mass: optional(
    quantity('kg', 'Falling mass; a mass in the log or of the rig goes before it.', {
      above: 0,
    }),
  ),
  gravity: optional(quantity('m/s2', "Local gravity; the rig's site goes before it.", { above: 0 })),
  energy: optional(
    word(
      ['potential', 'potential-with-compression', 'kinetic'],
      'What counts as the energy of a drop, for the whole series: m·g·h, that with the compression of the tyre, or ½·m·v² from the velocity column.',
    ),
  ),
  start: optional(measure('mm', 'Height of the first drop above first contact.', { above: 0 })),
  step: optional(
    reading(
      'Height from one level to the next: a length, or a share of the level below (5 %).',
      STEP,
      () => ({ pattern: `(${quantityPattern('mm', 'none')})|(${quantityPattern('1', 'none')})` }),
      readStep,
    ),
  ),
  levels: optional(
    list(
      measure('mm', 'A height above first contact.', { above: 0 }),
      'Heights of a fixed-level test, rising.',
      1,
    ),
  ),
  perLevel: optional(count('Drops at each height of a fixed-level test.')),
  heightTolerance: optional(
    measure('mm', 'How far a height may lie off its level; default 1 mm.', {
      atLeast: 0,
    }),
  ),
  limits: optional(
    block(
      {
        min: optional(measure('mm', 'Lowest height.', { atLeast: 0 })),
        max: optional(measure('mm', 'Highest height.', { above: 0 })),
      },
      'Heights beyond which the series does not go.',
    ),
  ),
  pressure: optional(
    either(
      quantity('bar', 'Tyre pressure before each drop, with its tolerance.', { atLeast: 0 }),
      mapOf(
        quantity('bar', 'Tyre pressure for this size, with its tolerance.', { atLeast: 0 }),
        'Pressures by the size that stands on the tyre.',
      ),
      'Tyre pressure before each drop: one, or a map by tyre size.',
    ),
  ),
  temperature: optional(quantity('°C', 'Temperature of tyre and room, with its tolerance in K.')),
  sites: optional(sites()),
  afterFailure: optional(afterFailure()),
  stop: optional(stop()),
  distribution: optional(word(LAWS, 'Law of the strength of the tyres, on energy; default normal.')),
  confidence: optional(share('Confidence of intervals and bounds, such as 95 %.', 0.5, 1)),
}));

type ImpactShape = ReturnType<typeof impactShape>;
export type ImpactFields = Fields<ImpactShape>;
export type WholeImpact = Whole<ImpactShape>;

const STEP = 'a height such as "25 mm", or a share of the level below such as "5 %"';

function readStep(text: string): Reading<Step> {
  const isRatio = text.trim().endsWith('%');
  const size = readQuantity(text, isRatio ? '1' : 'mm');
  if (!size.ok) return size;
  if (size.value.tolerance)
    return wrong(`found ${quote(text)}, expected a step without a tolerance; remove it`);
  const { value } = size.value;
  if (!(value > 0))
    return wrong(`found ${quote(text)}, expected a step above nought; write it without a sign`);
  return { ok: true, value: isRatio ? { kind: 'ratio', ratio: value } : { kind: 'additive', size: value } };
}

const STRETCH = 'an angle with its half width, such as "0 deg ± 20 deg"';

function readStretch(text: string): Reading<Sites['avoid'][number]> {
  const angle = readQuantity(text, 'deg');
  if (!angle.ok) return angle;
  const { tolerance, value } = angle.value;
  if (tolerance?.kind !== 'absolute') return wrong(`found ${quote(text)}, expected ${STRETCH}`);
  return { ok: true, value: { center: value, half: tolerance.value } };
}
