import { HEAVIER } from '../conformance/catalogue/heavier.ts';
import { block, list, optional } from './blocks.ts';
import { count, type Field, level, measure, name, quantity, word } from './fields.ts';
import { stretch, type Unit } from './impact-readings.ts';

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
const AFTER_FAILURE = ['retire', 'new-site'] as const;

export const mounting = () =>
  block(
    {
      rimWidth: optional(measure('mm', 'Inside width of the rim.', { above: 0 })),
      rimType: optional(name('Type of the rim, such as TC or TSS.')),
      tube: optional(name('Material of the tube, such as butyl.')),
      sealant: optional(measure('ml', 'Sealant in the tyre; 0 ml is none.', { atLeast: 0 })),
      insert: optional(name('Insert in the tyre; none is none.')),
      torque: optional(quantity('Nm', 'Torque of the axle nuts, with its tolerance.', { above: 0 })),
    },
    'What every tyre is mounted on and with. What is left out is taken to be as most tyres were mounted.',
    { minProperties: 1 },
  );

export const preparation = () =>
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

export const leakCheck = () =>
  block(
    {
      method: optional(name('How it is done, in the words of the log: water-bath, by-ear, pressure-hold.')),
      hold: optional(measure('s', 'Time for which the pressure is watched.', { above: 0 })),
      loss: optional(
        measure('bar', 'Loss of pressure over it beyond which the tyre has failed.', { above: 0 }),
      ),
    },
    'How tightness is looked at after each hit. Readings of the gauge are held against the outcome by it.',
    { minProperties: 1 },
  );

export const heavier = () =>
  list(
    word([...HEAVIER.keys()], 'Code of a departure that may weigh more than usual.'),
    'Departures that this protocol weighs heavier than usual; "tirelab explain CODE" says how heavy.',
    1,
  );

export const afterFailure = (): Field<'retire' | 'new-site'> =>
  word(AFTER_FAILURE, 'What becomes of a specimen that failed: retired, or hit again at a new site.');

export const stop = () =>
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

export const sites = () =>
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
        list(stretch(), 'Stretches that may not be hit, such as the valve and the joint of the casing.'),
      ),
      afterFailure: optional(afterFailure()),
    },
    'Where on the tyre the mass may land; angles are counted from the valve.',
  );

export const guess = (unit: Unit) =>
  block(
    {
      lowest: level(unit, 'The median is thought to lie above this.', { above: 0 }),
      highest: level(unit, 'The median is thought to lie below this.', { above: 0 }),
      spread: level(unit, 'Standard deviation of the strength, as guessed.', { above: 0 }),
    },
    'What is believed before a d-optimal test; a wrong guess costs drops, not truth.',
  );

export const regression = () =>
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
