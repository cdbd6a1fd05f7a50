import { DAMAGES } from '../conformance/damage.ts';
import { quote } from '../problem/echo.ts';
import { type Reading, readQuantity } from '../quantity/quantity.ts';
import { block, either, list, mapOf, optional } from './blocks.ts';
import { ESTIMATOR_NAMES } from './estimator-names.ts';
import {
  count,
  type Field,
  level,
  measure,
  name,
  prose,
  quantity,
  reading,
  share,
  word,
  wrong,
} from './fields.ts';
import type { Sites, Step } from './kinds.ts';
import { once } from './once.ts';
import { eitherPattern, quantityPattern } from './pattern.ts';
import type { Fields, Whole } from './read-fields.ts';

export const METHODS = [
  'up-and-down',
  'transformed-up-and-down',
  'rising-height',
  'fixed-level',
  'langlie',
  'd-optimal',
] as const;
const COVARIATES = [
  'construction',
  'pressure',
  'temperature',
  'mass',
  'rig',
  'session',
  'series',
  'operator',
] as const;
export const LAWS = ['normal', 'lognormal', 'logistic', 'weibull'] as const;
const AFTER_FAILURE = ['retire', 'new-site'] as const;

const mounting = () =>
  block(
    {
      rimWidth: optional(measure('mm', 'Inside width of the rim.', { above: 0 })),
      rimType: optional(name('Type of the rim, such as TC or TSS.')),
      tube: optional(name('Material of the tube, such as butyl.')),
      sealant: optional(measure('ml', 'Sealant in the tyre; 0 ml is none.', { atLeast: 0 })),
      insert: optional(name('Insert in the tyre; none is none.')),
    },
    'What every tyre is mounted on and with. What is left out is taken to be as most tyres were mounted.',
    { minProperties: 1 },
  );

const preparation = () =>
  block(
    {
      conditioning: optional(
        measure('h', 'Time in the conditioning room before the first hit.', { atLeast: 0 }),
      ),
      age: optional(measure('h', 'Time between cure and first hit.', { atLeast: 0 })),
    },
    'How long a tyre waits: 3 h in the room and 16 h after its cure, unless said here.',
    { minProperties: 1 },
  );

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

const guess = (unit: Unit) =>
  block(
    {
      lowest: level(unit, 'The median is thought to lie above this.', { above: 0 }),
      highest: level(unit, 'The median is thought to lie below this.', { above: 0 }),
      spread: level(unit, 'Standard deviation of the strength, as guessed.', { above: 0 }),
    },
    'What is believed before a d-optimal test; a wrong guess costs drops, not truth.',
  );

const regression = () =>
  block(
    {
      covariates: list(
        word(
          COVARIATES,
          'A column of the log, the construction of the tyre, its rig, or the session: one log file each.',
        ),
        'What may move the strength.',
      ),
      interactions: optional(
        list(
          list(word(COVARIATES, 'One of the covariates.'), 'Two covariates.', 2),
          'Pairs of covariates whose effects depend on one another.',
        ),
      ),
      adjust: optional(
        list(
          word(['pressure', 'temperature'], 'A condition of this protocol.'),
          "Conditions that the estimates are adjusted to, at the protocol's value; shown beside the unadjusted.",
        ),
      ),
    },
    'Effects on the strength, on the same likelihood, each with its likelihood-ratio test. Off without this key.',
  );

const damagePerHit = (): Field<number | 'estimated'> =>
  reading(
    'Share of its strength that each hit takes from a specimen, such as 1 %; "estimated" where two starts or steps allow it. Without it none is assumed.',
    DAMAGE,
    () => ({ pattern: eitherPattern('^estimated$', quantityPattern('1', 'none')) }),
    readDamage,
  );

type Unit = 'mm' | 'kg';

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
  step: optional(
    reading(
      'From one level to the next: a length (a mass, with vary: mass), or a share of the level below (5 %).',
      STEP,
      () => ({
        pattern: ['mm', 'kg', '1'].map((name) => quantityPattern(name, 'none')).reduce(eitherPattern),
      }),
      (text) => readStep(text, unit),
    ),
  ),
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

const STEP = 'a height such as "25 mm", or a share of the level below such as "5 %"';

const DAMAGE = 'a share such as "1 %", or "estimated"';

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

const STRETCH = 'an angle with its half width, such as "0 deg ± 20 deg"';

function readStretch(text: string): Reading<Sites['avoid'][number]> {
  const angle = readQuantity(text, 'deg');
  if (!angle.ok) return angle;
  const { tolerance, value } = angle.value;
  if (tolerance?.kind !== 'absolute') return wrong(`found ${quote(text)}, expected ${STRETCH}`);
  return { ok: true, value: { center: value, half: tolerance.value } };
}
