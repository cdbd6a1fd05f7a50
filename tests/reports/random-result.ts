// Any result that the types allow, with the worst names a log could bring: for properties of the reporters.
import fc from 'fast-check';
import type { ImpactResult } from '../../src/result/analysis.ts';
import { passing } from './results.ts';

const HOSTILE = [
  '\u001b[2J\u001b[31mred',
  '\u009b2J\u0007\u0000',
  '\u202eevil\u2066 right to left',
  'line\nbreak\r\ttab\u2028',
  'x'.repeat(10_000),
  '長'.repeat(300),
  'Z\u0301\u0302\u0303'.repeat(200),
  'ไม้ 👩‍🔧 🛞 ½ ©',
  '',
  '   ',
  '__proto__',
];

const name = fc.oneof(
  fc.constantFrom(...HOSTILE),
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.string(),
);
const number = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: 0, max: 1000, noNaN: true }),
  fc.constantFrom(0, -0, 45, 1e300, -1e300, 5e-324),
);
const orNull = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });
const count = fc.nat(100_000);

const interval = fc.record({
  level: fc.constantFrom(0.9, 0.95, 0.999),
  sides: fc.constantFrom(1 as const, 2 as const),
  lower: orNull(number),
  upper: orNull(number),
  method: fc.oneof(fc.constant('profile-likelihood'), name),
});

const estimate = fc.record({
  quantity: fc.oneof(fc.constantFrom('medianFailureEnergy', 'failureEnergyQuantile', 'energySpread'), name),
  method: fc.oneof(fc.constantFrom('censored-likelihood', 'up-and-down-count'), name),
  unit: fc.constantFrom('J', 'mm', '1'),
  value: orNull(number),
  standardError: orNull(number.map(Math.abs)),
  interval: orNull(interval),
  specimens: count,
  drops: count,
  why: orNull(name),
});

const deviation = fc.record({
  code: fc.constantFrom('DROP-01', 'DROP-04', 'DROP-21', 'DROP-54'),
  severity: fc.constantFrom('note' as const, 'minor' as const, 'invalidating' as const),
  scope: fc.constantFrom('drop' as const, 'run' as const),
  message: name,
  file: orNull(name),
  line: orNull(count),
  specimen: orNull(name),
  drop: orNull(count),
  count,
});

const drop = fc.record({
  line: count,
  specimen: name,
  series: fc.constantFrom(null, 'A', HOSTILE[0]!),
  height: fc.oneof(
    number,
    fc.integer({ min: 16, max: 24 }).map((level) => level * 25),
  ),
  energy: orNull(number),
  outcome: fc.constantFrom('failed' as const, 'survived' as const, 'not-evaluable' as const, null),
  used: fc.boolean(),
});

const VERDICTS = ['pass', 'fail', 'inconclusive', 'not-tested', 'invalid', 'waived', 'external'] as const;

const criterion = fc.record({
  id: name,
  quantity: fc.oneof(fc.constant('medianFailureEnergy'), name),
  limit: fc.oneof(
    number.map((atLeast) => ({ atLeast, unit: 'J' })),
    number.map((atMost) => ({ atMost, unit: '1' })),
    fc.tuple(number, number).map(([lower, upper]) => ({ within: { lower, upper }, unit: 'g' })),
  ),
  rule: fc.constantFrom('lower-bound', 'each'),
  confidence: fc.constantFrom(0.9, 0.95),
  estimate: orNull(number),
  standardError: orNull(number),
  specimens: count,
  bounds: fc.record({ lower: orNull(number), upper: orNull(number) }),
  basis: fc.constant({ method: null, interval: null }),
  verdict: fc.constantFrom(...VERDICTS),
  why: name,
  counted: fc.boolean(),
});

export const anyResult: fc.Arbitrary<ImpactResult> = fc
  .record({
    run: orNull(name),
    protocol: fc.record({
      id: name,
      version: name,
      method: fc.constantFrom('up-and-down', 'rising-height', 'fixed-level'),
      title: orNull(name),
    }),
    rig: orNull(fc.record({ id: name, config: orNull(name) })),
    constructions: fc.array(fc.record({ id: name, revision: name }), { maxLength: 12 }),
    specification: orNull(fc.record({ id: name, version: name })),
    inputs: fc.array(
      fc.record({
        role: fc.constantFrom('log' as const, 'protocol' as const),
        path: name,
        sha256: fc.constant('ab'.repeat(32)),
        bytes: count,
        rows: orNull(count),
      }),
      { maxLength: 20 },
    ),
    defaults: fc.array(name, { maxLength: 5 }),
    conformance: fc.record({
      status: fc.constantFrom('conforming' as const, 'deviating' as const, 'invalid' as const),
      deviations: fc.array(deviation, { maxLength: 30 }),
      excluded: count,
      why: orNull(name),
    }),
    notes: fc.array(name, { maxLength: 12 }),
    path: fc.array(drop, { maxLength: 100 }),
    samples: fc.constant([]),
    amendments: fc.constant([]),
    replaces: fc.constant(null),
    provisional: fc.constant([]),
    estimates: fc.array(estimate, { maxLength: 8 }),
    goodness: fc.constant(null),
    regression: fc.constant(null),
    criteria: fc.array(criterion, { maxLength: 8 }),
    verdict: orNull(fc.constantFrom(...VERDICTS)),
  })
  .map((part) => ({ ...passing, ...part }));
