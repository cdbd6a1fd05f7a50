import { describe, expect, it } from 'vitest';
import { bestLine } from '../../../src/statistics/calibration/best-line.ts';
import { lawTable, tailAt, tailValue } from '../../../src/statistics/calibration/law-table.ts';
import { fitQuickly } from '../../../src/statistics/calibration/quick-fit.ts';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { prepareProfile } from '../../../src/statistics/likelihood/constrained.ts';
import { gatherObservations, type Observation } from '../../../src/statistics/likelihood/observation.ts';
import { randomStream } from '../../../src/statistics/random/random-stream.ts';

const NAMES = ['normal', 'logistic', 'weibull'] as const;

describe('lawTable', () => {
  it.each(NAMES)('has both tails of the %s law to 1e-6, with their derivatives', (name) => {
    // The functions of src/statistics/laws, held to 60-digit values in their own tests.
    const law = laws[name].standard;
    const table = lawTable(law);
    const point = { value: 0, slope: 0, curvature: 0 };
    for (let z = -11.97; z < 6; z += 0.173) {
      tailAt(table.cdf, z, point);
      expect(point.value).toBeCloseTo(law.logCdf(z), 6);
      expect(point.slope).toBeCloseTo(law.dLogCdf(z), 5);
      expect(point.curvature).toBeCloseTo(law.d2LogCdf(z), 2);
      expect(tailValue(table.cdf, z)).toBe(point.value);
      tailAt(table.sf, z, point);
      expect(Math.abs(point.value - law.logSf(z))).toBeLessThan(1e-6 * (1 + Math.abs(law.logSf(z))));
    }
  });
});

describe('fitQuickly', () => {
  /** Made-up tests of every kind: hits about a level, or rises, on 3 to 9 levels. */
  function invented(index: number, rises: boolean): Observation[] {
    const stream = randomStream(8, index);
    const step = 0.3 + 1.5 * stream.uniform();
    return Array.from({ length: 4 + Math.floor(20 * stream.uniform()) }, () => {
      const level = step * Math.round((2.2 * stream.normal()) / (0.6 + step));
      const strength = stream.normal();
      if (rises) {
        const below = step * Math.floor(strength / step);
        return {
          lower: below < -2 ? -Infinity : below,
          upper: below > 2 ? Infinity : below + step,
          count: 1,
        };
      }
      return strength <= level
        ? { lower: -Infinity, upper: level, count: 1 }
        : { lower: level, upper: Infinity, count: 1 };
    });
  }

  it.each([...NAMES.map((name) => [name, false] as const), ...NAMES.map((name) => [name, true] as const)])(
    'finds what prepareProfile finds: %s law, rises %s',
    (name, rises) => {
      const law = laws[name].standard;
      const best = { location: 0, scale: 0, turn: 0, supremum: 0 };
      const kinds = new Set<string>();
      for (let index = 0; index < 400; index++) {
        const sample = gatherObservations(invented(index, rises), 'identity');
        const basis = prepareProfile(sample, law);
        const line = bestLine(basis);
        kinds.add(basis.fit.kind);
        fitQuickly(sample, lawTable(law), best);
        expect(Math.abs(best.supremum - basis.supremum)).toBeLessThan(1e-4);
        if (basis.fit.kind === 'exists') {
          const error = Math.sqrt(basis.fit.covariance.location);
          expect(Math.abs(best.location - line.location)).toBeLessThan(0.003 * error);
          expect(Math.abs(best.scale / line.scale - 1)).toBeLessThan(0.01);
        } else expect(best).toMatchObject(line);
      }
      expect(kinds.size).toBeGreaterThan(1);
    },
  );
});
