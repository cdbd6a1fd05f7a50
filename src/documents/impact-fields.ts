import * as z from 'zod';
import { quote } from '../problem/echo.ts';
import { type Reading, readQuantity } from '../quantity/quantity.ts';
import { block, count, measure, name, prose, quantity, reading, share, word, wrong } from './fields.ts';
import type { Sites, Step } from './kinds.ts';
import { once } from './once.ts';
import { quantityPattern } from './pattern.ts';
import type { Fields, Whole } from './read-fields.ts';

export const METHODS = ['up-and-down', 'rising-height', 'fixed-level'] as const;
export const LAWS = ['normal', 'lognormal', 'logistic', 'weibull'] as const;
const AFTER_FAILURE = ['retire', 'new-site'] as const;

const afterFailure = (): z.ZodType<'retire' | 'new-site', string> =>
  word(AFTER_FAILURE, 'What becomes of a specimen that failed: retired, or hit again at a new site.');

const stop = () =>
  block(
    {
      drops: count('Valid drops after which the series ends.').optional(),
      specimens: count('Specimens after which the series ends.').optional(),
      reversals: count('Changes of direction after which an up-and-down series ends.').optional(),
      rarer: count('Go on after "drops" until the rarer of the two outcomes was seen this often.').optional(),
      atMost: count('Valid drops at which a series that "rarer" prolongs ends all the same.').optional(),
    },
    'When a series ends: any of its counts, of valid drops. Without it the operator ends the series.',
  ).meta({ minProperties: 1, dependencies: { rarer: ['drops'], atMost: ['rarer'] } });

const sites = () =>
  block(
    {
      perSpecimen: count('Hits that one specimen may take.').optional(),
      spacing: measure('deg', 'Angle between neighbouring sites.', { above: 0, atMost: 360 }).optional(),
      each: word(
        ['same-spot', 'new-spot', 'series-per-site'],
        'Whether a specimen is hit at one place again and again, turned after every hit, or carries one series at each site.',
      ).optional(),
      avoid: z
        .array(reading('A stretch that may not be hit.', STRETCH, STRETCH_JSON(), readStretch))
        .meta({
          description: 'Stretches that may not be hit, such as the valve and the joint of the casing.',
        })
        .optional(),
      afterFailure: afterFailure().optional(),
    },
    'Where on the tyre the mass may land; angles are counted from the valve.',
  );

/** The keys of an impact protocol. */
export const impactShape = once(() => ({
  format: word(['tirelab.protocol/1'], 'What this file is.'),
  kind: word(['impact'], 'A drop test; "endurance" is a drum test.'),
  id: name('Name of the protocol; results and specifications refer to it.'),
  version: name('Version of the protocol, as text: a change of method or levels is a new one.'),
  title: prose('What the protocol is, for people.').optional(),
  method: word(
    METHODS,
    'up-and-down: one step lower after a failure, higher after a survival. rising-height: one specimen is hit higher and higher until it fails. fixed-level: a set number of drops at each height.',
  ),
  failure: prose('What counts as a failure, in words.').optional(),
  mass: quantity('kg', 'Falling mass; a mass in the log or of the rig goes before it.', {
    above: 0,
  }).optional(),
  gravity: quantity('m/s2', "Local gravity; the rig's site goes before it.", { above: 0 }).optional(),
  energy: word(
    ['potential', 'potential-with-compression', 'kinetic'],
    'What counts as the energy of a drop, for the whole series: m·g·h, that with the compression of the tyre, or ½·m·v² from the velocity column.',
  ).optional(),
  start: measure('mm', 'Height of the first drop above first contact.', { above: 0 }).optional(),
  step: reading(
    'Height from one level to the next: a length, or a share of the level below (5 %).',
    STEP,
    { pattern: `(${quantityPattern('mm', 'none')})|(${quantityPattern('1', 'none')})` },
    readStep,
  ).optional(),
  levels: z
    .array(measure('mm', 'A height above first contact.', { above: 0 }))
    .min(1)
    .meta({ description: 'Heights of a fixed-level test, rising.' })
    .optional(),
  perLevel: count('Drops at each height of a fixed-level test.').optional(),
  heightTolerance: measure('mm', 'How far a height may lie off its level; default 1 mm.', {
    atLeast: 0,
  }).optional(),
  limits: block(
    {
      min: measure('mm', 'Lowest height.', { atLeast: 0 }).optional(),
      max: measure('mm', 'Highest height.', { above: 0 }).optional(),
    },
    'Heights beyond which the series does not go.',
  ).optional(),
  pressure: z
    .union([
      quantity('bar', 'Tyre pressure before each drop, with its tolerance.', { atLeast: 0 }),
      z.record(
        z.string(),
        quantity('bar', 'Tyre pressure for this size, with its tolerance.', { atLeast: 0 }),
      ),
    ])
    .meta({ description: 'Tyre pressure before each drop: one, or a map by tyre size.' })
    .optional(),
  temperature: quantity('°C', 'Temperature of tyre and room, with its tolerance in K.').optional(),
  sites: sites().optional(),
  afterFailure: afterFailure().optional(),
  stop: stop().optional(),
  distribution: word(LAWS, 'Law of the strength of the tyres, on energy; default normal.').optional(),
  confidence: share('Confidence of intervals and bounds, such as 95 %.', 0.5, 1).optional(),
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

function STRETCH_JSON(): Readonly<Record<string, unknown>> {
  return { pattern: quantityPattern('deg', 'required') };
}

function readStretch(text: string): Reading<Sites['avoid'][number]> {
  const angle = readQuantity(text, 'deg');
  if (!angle.ok) return angle;
  const { tolerance, value } = angle.value;
  if (tolerance?.kind !== 'absolute') return wrong(`found ${quote(text)}, expected ${STRETCH}`);
  return { ok: true, value: { center: value, half: tolerance.value } };
}
