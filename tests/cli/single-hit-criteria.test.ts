import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// Criteria on the median of one hit on a fresh tyre. Invented rises; only how the numbers hang together is asked here, the
// fit is held to lme4 in tests/statistics/specimen-effect.

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Heights at which eight tyres failed on their way up from 350 mm by 25 mm. */
const RISES = [375, 425, 400, 350, 450, 400, 425, 375];
const HEAD = 'specimen,height [mm],outcome\n';

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const specification = (quantity: string, more = '') =>
  `format: tirelab.specification/1\nid: s\nversion: 1.0.0\ncriteria:\n` +
  `  - { id: headline, protocol: pinch-rising-height@1.0.0, quantity: ${quantity}, atLeast: 25 J${more} }\n` +
  `  - { id: one-hit, protocol: pinch-rising-height@1.0.0, quantity: ${quantity}, method: specimen-effect, atLeast: 25 J${more} }\n`;

async function judged(text: string, protocol: string, log: string) {
  const spec = file(`spec-${text.length}.yaml`, text);
  const asked = ['analyze', '--json', '--protocol', protocol, '--spec', spec, log];
  return JSON.parse((await tirelab(asked)).out);
}

describe('method: specimen-effect', () => {
  const rises = () =>
    file(
      'rises.csv',
      HEAD +
        RISES.map((top, i) =>
          Array.from(
            { length: (top - 350) / 25 + 1 },
            (_, k) => `T${i},${350 + 25 * k},${350 + 25 * k === top ? 'failed' : 'survived'}\n`,
          ).join(''),
        ).join(''),
    );

  it('judges by the estimate that stands beside the headline, with one-sided bounds inside its two-sided interval', async () => {
    const document = await judged(
      specification('medianFailureEnergy'),
      'protocols/pinch-rising-height.yaml',
      rises(),
    );
    const [headline, oneHit] = document.criteria;
    const entry = document.estimates.find(
      ({ method, quantity }: { method: string; quantity: string }) =>
        method === 'specimen-effect' && quantity === 'medianFailureEnergy',
    );
    expect(headline.basis.method).toBe('censored-likelihood');
    expect(oneHit.basis).toEqual({ method: 'specimen-effect', interval: 'profile-likelihood' });
    expect(oneHit.estimate).toBe(entry.value);
    expect(oneHit.bounds.lower).toBeGreaterThan(entry.interval.lower);
    expect(oneHit.bounds.upper).toBeLessThan(entry.interval.upper);
    expect(oneHit.bounds.lower).toBeLessThan(entry.value);
  });

  it('judges quantiles too', async () => {
    const document = await judged(
      specification('failureEnergyQuantile', ', probability: 10 %'),
      'protocols/pinch-rising-height.yaml',
      rises(),
    );
    const [, oneHit] = document.criteria;
    expect(oneHit.basis.method).toBe('specimen-effect');
    expect(oneHit.bounds.lower).toBeLessThan(oneHit.estimate);
  });

  it('is the likelihood itself where each tyre is hit once', async () => {
    const log = file(
      'single.csv',
      `${HEAD}A,500,failed\nB,475,survived\nC,500,failed\nD,475,failed\nE,450,survived\n`,
    );
    const text = specification('medianFailureEnergy').replaceAll('pinch-rising-height', 'pinch-up-down');
    const document = await judged(text, 'protocols/pinch-up-down.yaml', log);
    const [headline, oneHit] = document.criteria;
    expect(oneHit.basis).toEqual(headline.basis);
    expect(oneHit.bounds).toEqual(headline.bounds);
  });

  it('is an error with what it does not give', async () => {
    const spec = file('bad.yaml', specification('energySpread'));
    const asked = ['analyze', '--protocol', 'protocols/pinch-rising-height.yaml', '--spec', spec, rises()];
    const { status, err } = await tirelab(asked);
    expect(status).toBe(2);
    expect(err).toContain('found "method: specimen-effect" with energySpread');
  });
});
