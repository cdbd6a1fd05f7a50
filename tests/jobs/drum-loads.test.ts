import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, describe, expect, it } from 'vitest';
import { analyze } from '../../src/jobs/analyze.ts';
import type { EnduranceResult } from '../../src/result/endurance.ts';
import gas from '../reference/ari-02/ARI-02-gas-pressure.json' with { type: 'json' };
import loads from '../reference/dmg-04/DMG-04-load-equivalence.json' with { type: 'json' };
import { expectedOf } from '../reference/published.ts';

const folder = mkdtempSync(join(tmpdir(), 'drum-loads-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const FULL = 1000;
const PRESSURE = gas.data.gauge_kPa_20C[0]! / 100;

/** The schedule of DMG-04 run to the letter, a row a minute, at 20 °C and a pressure of ARI-02. */
async function stepped(keys: string): Promise<EnduranceResult> {
  const { hours, load_fraction, speed_kmh } = loads.data;
  const lines = ['time,speed [km/h],load [N],pressure [bar],tyre temperature [°C],distance [km]'];
  const blocks: string[] = [];
  let minute = 0;
  for (const [i, share] of load_fraction.entries()) {
    const load = FULL * share;
    blocks.push(
      `  - { block: step-${i}, distance: ${hours[i]! * speed_kmh} km, speed: ${speed_kmh} km/h ± 1 %, load: ${load} N ± 1 % }`,
    );
    const last = i === load_fraction.length - 1 ? 1 : 0;
    for (const end = minute + hours[i]! * 60 + last; minute < end; minute++) {
      const time = new Date(Date.UTC(2026, 2, 2, 6, minute)).toISOString();
      lines.push(`${time},${speed_kmh},${load},${PRESSURE},20,${((minute * speed_kmh) / 60).toFixed(3)}`);
    }
  }
  writeFileSync(join(folder, 'log.csv'), `${lines.join('\n')}\n`);
  writeFileSync(
    join(folder, 'protocol.yaml'),
    `format: tirelab.protocol/1\nid: stepped\nversion: 1.0.0\nkind: endurance\nschedule:\n${blocks.join('\n')}\n${keys}`,
  );
  writeFileSync(
    join(folder, 'run.yaml'),
    'format: tirelab.run/1\nid: stepped\nprotocol: protocol.yaml\nlogs: [log.csv]\n',
  );
  const result = await analyze({ kind: 'run', path: join(folder, 'run.yaml') }, Readable.from([]));
  return result as EnduranceResult;
}

const estimatesOf = ({ estimates }: EnduranceResult, quantity: string) =>
  estimates.filter((entry) => entry.quantity === quantity);

describe('blocks of different load through the whole job', () => {
  // DMG-04: Nelson (1990), inverse power law; the schedule from memory, its sums computed.
  it.each([1, 3, 4, 9])('gives the equivalent distance of DMG-04, exponent %i', async (exponent) => {
    const result = await stepped(`equivalence: { load: ${FULL} N, exponent: ${exponent} }\n`);
    const [entry] = estimatesOf(result, 'equivalentDistance');
    expect(result.distance.logged).toBeCloseTo(expectedOf(loads, 'total distance km'), 6);
    // The row at which the load steps belongs to the kilometres of the step before: one minute's 2 km of each.
    const expected = expectedOf(loads, `equivalent distance at 100 % load, p=${exponent}`);
    expect(Math.abs(entry!.value! / expected - 1)).toBeLessThan(1e-3);
    expect(entry!.interval).toBeNull();
    expect(entry!.why).toContain('no distance on a road');
  });

  it('carries the uncertainty of the exponent: between its ends', async () => {
    const result = await stepped(
      `equivalence: { load: ${FULL} N, exponent: 3.5, uncertainty: 0.25 }\nconfidence: 95 %\n`,
    );
    const { value, interval } = estimatesOf(result, 'equivalentDistance')[0]!;
    // 3.5 ± 1.96 × 0.25 reaches from about 3 to about 4, so the ends lie near those of DMG-04.
    expect(interval!.lower).toBeCloseTo(expectedOf(loads, 'equivalent distance at 100 % load, p=4'), -1);
    expect(interval!.upper).toBeCloseTo(expectedOf(loads, 'equivalent distance at 100 % load, p=3'), -1);
    expect(value).toBeGreaterThan(interval!.lower!);
  });

  // ARI-02: ideal gas law on absolute pressure, standard atmosphere.
  it('refers pressures to one temperature as ARI-02 does', async () => {
    const result = await stepped('pressureAt: 40 °C\n');
    const entries = estimatesOf(result, 'referredPressure');
    expect(entries).toHaveLength(3);
    const expected = expectedOf(gas, '250 kPa gauge at 20 C -> gauge at 40 C') / 100;
    for (const { value } of entries) expect(value).toBeCloseTo(expected, 6);
  });

  it('says nothing of either where the protocol does not ask', async () => {
    const { estimates } = await stepped('');
    expect(estimates.map(({ quantity }) => quantity)).not.toContain('equivalentDistance');
    expect(estimates.map(({ quantity }) => quantity)).not.toContain('referredPressure');
  });
});
