import { describe, expect, it } from 'vitest';
import { ruleFor } from '../../src/impact/rules/method-rules.ts';
import { carryOut, emptyTrials } from '../../src/simulation/carry-out.ts';
import { levelTable } from '../../src/simulation/level-table.ts';
import { rises, singleLooks } from '../../src/simulation/sampling.ts';
import { tyresOf } from '../../src/simulation/strength.ts';
import { gatherObservations, type Observation } from '../../src/statistics/likelihood/observation.ts';
import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { designWith } from './designs.ts';

// The likelihood of a simulated test must read what the observations of the same drops in a log would be:
// a failure (−∞, x], a survival (x, ∞), a rise (last survived, failed] (CONTRACT; common practice, no source).

describe('samples of simulated tests', () => {
  for (const method of ['up-and-down', 'rising-height'] as const) {
    it(`are those of the observations: ${method}`, () => {
      const stop = method === 'rising-height' ? { specimens: 12 } : { drops: 40 };
      const { protocol } = designWith({ method, start: 480, step: { kind: 'additive', size: 20 }, stop });
      const assumed = {
        law: 'normal',
        median: 600,
        spread: 30,
        between: 0.5,
        damage: 0.01,
        anyOffset: false,
      } as const;
      const levels = levelTable(1, 'identity');
      const trials = emptyTrials();
      const sampling = (method === 'rising-height' ? rises : singleLooks)('identity');
      for (let test = 0; test < 200; test++) {
        const tyres = tyresOf(assumed, protocol.step, 1, 0);
        expect(carryOut(ruleFor(protocol, null), tyres, true, levels, randomStream(7, test), trials)).toBe(
          true,
        );
        const observations: Observation[] = [];
        for (let i = 0; i < trials.size; i++) {
          const x = levels.level[trials.level[i]!]!;
          const failed = trials.failed[i] === 1;
          const isLast = trials.specimen[i + 1] !== trials.specimen[i] || i + 1 === trials.size;
          if (method === 'up-and-down') {
            observations.push({ lower: failed ? -Infinity : x, upper: failed ? x : Infinity, count: 1 });
          } else if (isLast) {
            const isFirst = i === 0 || trials.specimen[i - 1] !== trials.specimen[i];
            expect(failed).toBe(true);
            observations.push({ lower: isFirst ? -Infinity : x - 20, upper: x, count: 1 });
          }
        }
        const wanted = gatherObservations(observations, 'identity');
        const { sample } = sampling(trials, levels);
        const rows = Array.from({ length: sample.size }, (_, i) => ({
          lower: sample.lower[i]!,
          upper: sample.upper[i]!,
          count: sample.count[i]!,
        }));
        // In another order there: the likelihood is the same.
        const found = gatherObservations(rows, 'identity');
        expect([...found.lower]).toEqual([...wanted.lower]);
        expect([...found.upper]).toEqual([...wanted.upper]);
        expect([...found.count]).toEqual([...wanted.count]);
      }
    });
  }
});
