import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ImpactProtocol, Step } from '../../../src/documents/kinds.ts';
import { ruleFor } from '../../../src/impact/rules/method-rules.ts';
import type { Drop } from '../../../src/logs/drop.ts';
import {
  changed,
  dropOf,
  found,
  quantity,
  replayed,
  risingProtocol,
  upAndDownProtocol,
} from '../invented.ts';

// What the rule itself dictates must replay without a deviation, and one fault must come back as that fault alone.

const PRESSURE = quantity(2, 'bar', { kind: 'absolute', value: 0.05 });

const steps: fc.Arbitrary<Step> = fc.oneof(
  fc.integer({ min: 8, max: 60 }).map((size) => ({ kind: 'additive', size }) as const),
  fc.integer({ min: 3, max: 10 }).map((percent) => ({ kind: 'ratio', ratio: percent / 100 }) as const),
);

/** A log that an operator makes who does what the rule says; outcomes are the given ones, in turn. */
function obeying(protocol: ImpactProtocol, outcomes: readonly boolean[]): Drop[] {
  const rule = ruleFor(protocol, null);
  const drops: Drop[] = [];
  let state = rule.start;
  let specimen = 0;
  let hit = 0;
  for (const failed of outcomes) {
    const advice = rule.advice(state);
    if (advice.decision === 'stop') break;
    hit = advice.specimen === 'same' ? hit + 1 : 1;
    if (hit === 1) specimen += 1;
    const outcome = failed ? 'failed' : 'survived';
    const { height } = advice;
    const name = `T${specimen}`;
    const conditions = {
      site: (hit * 37) % 360,
      pressure: 2,
      plannedHeight: height,
      number: drops.length + 1,
    };
    drops.push(dropOf({ line: drops.length + 2, specimen: name, height, outcome, ...conditions }));
    state = rule.step(state, { height, outcome, specimen: name, hit });
  }
  return drops;
}

const upAndDown = fc
  .record({ start: fc.integer({ min: 300, max: 700 }), step: steps })
  .map((plan) => upAndDownProtocol({ ...plan, pressure: PRESSURE }));

/** What only the end of a series can say, whatever its outcomes were. */
const withoutEnds = (all: readonly string[]) => all.filter((each) => !/^DROP-(?:0[789]|10)@/u.test(each));

describe('a log made as the rule says', () => {
  it('replays without a deviation, up-and-down', () => {
    fc.assert(
      fc.property(
        upAndDown,
        fc.array(fc.boolean(), { minLength: 3, maxLength: 60 }),
        (protocol, outcomes) => {
          const result = replayed(protocol, obeying(protocol, outcomes));
          expect(withoutEnds(found(result))).toEqual([]);
          expect(result.counts.validDrops).toBe(outcomes.length);
        },
      ),
    );
  });

  it('replays without a deviation, rising', () => {
    const rising = steps.map((step) =>
      risingProtocol({ step, limits: { min: null, max: 560 }, stop: { specimens: 8 } }),
    );
    fc.assert(
      fc.property(rising, fc.array(fc.boolean(), { minLength: 3, maxLength: 60 }), (protocol, outcomes) => {
        expect(withoutEnds(found(replayed(protocol, obeying(protocol, outcomes))))).toEqual([]);
      }),
    );
  });
});

describe('one fault in a log made as the rule says', () => {
  type Fault = (drop: Drop, step: number, before: Drop) => Partial<Drop>;
  const faults: readonly (readonly [expected: string, fault: Fault])[] = [
    ['DROP-21 minor', () => ({ pressure: 2.08 })],
    ['DROP-21 invalidating', () => ({ pressure: 1.7 })],
    ['DROP-11 minor', () => ({ mass: 7 })],
    ['DROP-01 minor', ({ height }, step) => ({ height: height + 0.3 * step })],
    ['DROP-33 invalidating', (_drop, _step, before) => ({ specimen: before.specimen, site: 200 })],
    ['DROP-44 invalidating', () => ({ outcome: null })],
  ];

  it.each(faults)('comes back as %s at its line, and as nothing else', (expected, fault) => {
    fc.assert(
      fc.property(
        upAndDown,
        fc.array(fc.boolean(), { minLength: 12, maxLength: 40 }),
        fc.nat(),
        (protocol, outcomes, at) => {
          const drops = obeying(protocol, outcomes);
          // The fault is in the last drop where it would otherwise change what comes after it.
          const isLast = expected.startsWith('DROP-44');
          const index = isLast ? drops.length - 1 : 1 + (at % (drops.length - 1));
          const drop = drops[index]!;
          // DROP-33 on a survivor: on a failed specimen DROP-34 is raised beside it.
          fc.pre(!expected.startsWith('DROP-33') || drops[index - 1]!.outcome === 'survived');
          const step =
            protocol.step!.kind === 'additive' ? protocol.step!.size : drop.height * protocol.step!.ratio;
          const result = replayed(
            protocol,
            changed(drops, { [drop.line]: fault(drop, step, drops[index - 1]!) }),
          );
          const [code, severity] = expected.split(' ');
          expect(withoutEnds(found(result))).toEqual([`${code}@${drop.line} ${severity}`]);
          expect(result.conformance.status).toBe('deviating');
        },
      ),
    );
  });

  it('a move the wrong way comes back as DROP-04, where the rule goes on from there', () => {
    fc.assert(
      fc.property(
        upAndDown,
        fc.array(fc.boolean(), { minLength: 12, maxLength: 40 }),
        (protocol, outcomes) => {
          const drops = obeying(protocol, outcomes);
          const last = drops.at(-1)!;
          const before = drops.at(-2)!;
          // At a limit of the rig it stays, and every move is a wrong one.
          fc.pre(last.height !== before.height);
          const wrong = before.height - (last.height - before.height);
          const result = replayed(
            protocol,
            changed(drops, { [last.line]: { height: wrong, plannedHeight: null } }),
          );
          expect(withoutEnds(found(result))).toEqual([`DROP-04@${last.line} minor`]);
        },
      ),
    );
  });
});

describe('a long log', () => {
  it('of 100,000 drops takes ten times as long as one of 10,000, give or take', () => {
    const protocol = upAndDownProtocol({ pressure: PRESSURE });
    const seconds = (count: number) => {
      const drops = obeying(
        protocol,
        Array.from({ length: count }, (_, index) => (index * 7919) % 13 < 6),
      );
      const from = performance.now();
      replayed(protocol, drops);
      return (performance.now() - from) / 1000;
    };
    seconds(10_000);
    const short = seconds(10_000);
    expect(seconds(100_000)).toBeLessThan(Math.max(3, 40 * short));
  });

  it('with every row deviating keeps its list short', () => {
    const protocol = upAndDownProtocol({ pressure: PRESSURE });
    const drops = obeying(
      protocol,
      Array.from({ length: 100_000 }, (_, index) => index % 2 === 0),
    ).map((drop) => ({
      ...drop,
      pressure: 1,
      mass: 9,
      specimen: 'only one',
    }));
    const { deviations, conformance } = replayed(protocol, drops);
    expect(deviations.length).toBeLessThan(130);
    expect(conformance.status).toBe('invalid');
  });
});
