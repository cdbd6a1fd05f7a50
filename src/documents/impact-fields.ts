import { DAMAGES } from '../conformance/damage.ts';
import { block, either, list, mapOf, optional } from './blocks.ts';
import { ESTIMATOR_NAMES } from './estimator-names.ts';
import { count, level, measure, name, prose, quantity, share, word } from './fields.ts';
import {
  afterFailure,
  guess,
  heavier,
  leakCheck,
  mounting,
  preparation,
  regression,
  sites,
  stop,
} from './impact-blocks.ts';
import { damagePerHit, step, type Unit } from './impact-readings.ts';
import { once } from './once.ts';
import type { Fields, Whole } from './read-fields.ts';

export const METHODS = [
  'up-and-down',
  'transformed-up-and-down',
  'rising-height',
  'fixed-level',
  'langlie',
  'd-optimal',
] as const;
export const LAWS = ['normal', 'lognormal', 'logistic', 'weibull'] as const;

/** The keys of an impact protocol that varies the height. */
export const impactShape = once(() => shapeIn('mm'));
/** The keys of one that varies the falling mass: its levels are masses. */
export const massShape = once(() => shapeIn('kg'));

const shapeIn = (unit: Unit) => ({
  format: word(['tirelab.protocol/1'], 'What this file is.'),
  kind: word(['impact'], 'A drop test; "endurance" is a drum test.'),
  id: name('Name of the protocol; results and specifications refer to it.'),
  version: name('Version of the protocol, as text: a change of method or levels is a new one.'),
  title: optional(prose('What the protocol is, for people.')),
  method: word(
    METHODS,
    'up-and-down: one step lower after a failure, higher after a survival. transformed-up-and-down: higher only after several survivals in a row, which seeks the lower tail. rising-height: one specimen is hit higher and higher until it fails. fixed-level: a set number of drops at each level. langlie: back-averaging between two limits. d-optimal: each level where it tells most of median and spread.',
  ),
  failure: optional(prose('What counts as a failure, in words.')),
  failureModes: optional(
    list(
      word([...DAMAGES.keys()], 'A damage code, as it stands in the log.'),
      'Damages that count as a failure; without it every damage of the tyre does.',
      1,
    ),
  ),
  mounting: optional(mounting()),
  preparation: optional(preparation()),
  leakCheck: optional(leakCheck()),
  heavier: optional(heavier()),
  rigCheck: optional(
    word(['daily'], 'daily: a check of the rig must stand before the first drop of each day.'),
  ),
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
  vary: optional(
    word(['height', 'mass'], 'What moves from drop to drop: the height, or at one height the falling mass.'),
  ),
  height: optional(measure('mm', 'The one height of a protocol that varies the mass.', { above: 0 })),
  start: optional(
    level(unit, 'Height of the first drop above first contact (its mass, with vary: mass).', { above: 0 }),
  ),
  step: optional(step(unit)),
  levels: optional(
    list(
      level(unit, 'A height above first contact (a mass, with vary: mass).', { above: 0 }),
      'Levels of a fixed-level test, rising.',
      1,
    ),
  ),
  perLevel: optional(count('Drops at each level of a fixed-level test.')),
  survivalsToRaise: optional(
    count(
      'Survivals in a row before a transformed up-and-down series rises: k of them seek the share failed 1 − 2^(−1/k).',
      2,
      8,
    ),
  ),
  guess: optional(guess(unit)),
  heightTolerance: optional(
    measure('mm', 'How far a height may lie off its level; default 1 mm.', {
      atLeast: 0,
    }),
  ),
  limits: optional(
    block(
      {
        min: optional(level(unit, 'Lowest height (or mass).', { atLeast: 0 })),
        max: optional(level(unit, 'Highest height (or mass).', { above: 0 })),
      },
      'Levels beyond which the series does not go.',
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
  damagePerHit: optional(damagePerHit()),
  estimators: optional(
    list(word(ESTIMATOR_NAMES, 'An estimator.'), 'Estimators beside those that the method has anyway.'),
  ),
  regression: optional(regression()),
  confidence: optional(share('Confidence of intervals and bounds, such as 95 %.', 0.5, 1)),
});

type ImpactShape = ReturnType<typeof impactShape>;
export type ImpactFields = Fields<ImpactShape>;
export type WholeImpact = Whole<ImpactShape>;
