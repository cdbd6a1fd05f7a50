import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, describe, expect, it } from 'vitest';
import { analyze } from '../../src/jobs/analyze.ts';
import type { EnduranceResult } from '../../src/result/endurance.ts';
import worn from '../reference/wear-01/WEAR-01-own.json' with { type: 'json' };
import flat from '../reference/wear-02/WEAR-02-flat.json' with { type: 'json' };

const folder = mkdtempSync(join(tmpdir(), 'drum-wear-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PROTOCOL = `format: tirelab.protocol/1
id: wear
version: 1.0.0
kind: endurance
wearLimit: 1.0 mm
schedule:
  - { block: main, distance: 5000 km, speed: 30 km/h ± 2 %, load: 650 N ± 2 % }
`;

async function wearRun(
  rows: string,
  header = 'specimen,distance [km],point,tread depth [mm],state',
  more = '',
) {
  writeFileSync(join(folder, 'protocol.yaml'), PROTOCOL);
  writeFileSync(join(folder, 'inspections.csv'), `${header}\n${rows}`);
  writeFileSync(join(folder, 'outcomes.csv'), 'specimen,survived [km],failed [km],cause\nT-1,4000,,\n');
  const run =
    'format: tirelab.run/1\nid: wear\nprotocol: protocol.yaml\nlogs: [outcomes.csv]\ninspections: inspections.csv\n';
  writeFileSync(join(folder, 'run.yaml'), run + more);
  const result = await analyze({ kind: 'run', path: join(folder, 'run.yaml') }, Readable.from([]));
  return result as EnduranceResult;
}

const readings = ({ data }: typeof worn | typeof flat, specimen = 'T-1') =>
  data.distance_km.map((km, i) => `${specimen},${km},1,${data.depth_mm[i]},cold\n`).join('');

const expected = (of: { expected: readonly { name: string; value: number }[] }, name: string) =>
  of.expected.find((entry) => entry.name === name)!.value;

const estimate = (result: EnduranceResult, quantity: string) =>
  result.estimates.find((entry) => entry.quantity === quantity)!;

describe('wear through the whole job', () => {
  // WEAR-01: own data; Fieller limits computed twice (R, Python).
  it('gives rate and distance to the limit of WEAR-01, and calls it an extrapolation', async () => {
    const result = await wearRun(readings(worn));
    const rate = estimate(result, 'wearRate');
    const life = estimate(result, 'wearLife');
    expect(rate.value).toBeCloseTo(-1000 * expected(worn, 'b'), 9);
    expect(rate.interval).toMatchObject({ method: 'student-t', sides: 2 });
    expect(life.value).toBeCloseTo(expected(worn, 'x0'), 5);
    expect(life.standardError).toBeCloseTo(expected(worn, 'se_reg'), 6);
    expect(life.interval!.lower).toBeCloseTo(expected(worn, 'mean-line limit 0'), 4);
    expect(life.interval!.upper).toBeCloseTo(expected(worn, 'mean-line limit 1'), 4);
    expect(life.why).toContain('extrapolation');
  });

  // WEAR-02: g = 22.9, so that no end can be named.
  it('says unbounded as unbounded on WEAR-02', async () => {
    const life = estimate(await wearRun(readings(flat)), 'wearLife');
    expect(life.interval).toMatchObject({ lower: null, upper: null, method: 'fieller' });
    expect(life.why).toContain('unbounded');
  });

  it('leaves hot readings out, and says so at their line', async () => {
    const result = await wearRun(`${readings(worn)}T-1,4000,1,2.9,hot\n`);
    expect(estimate(result, 'wearRate').value).toBeCloseTo(-1000 * expected(worn, 'b'), 9);
    expect(result.conformance.deviations).toMatchObject([{ code: 'DRUM-24', line: 10, specimen: 'T-1' }]);
  });

  it('finds points that moved and depths that grew', async () => {
    const result = await wearRun('T-1,0,1,3.0,\nT-1,500,1,2.8,\nT-1,1000,2,2.95,\n');
    expect(result.conformance.deviations.map(({ code, line }) => [code, line])).toEqual([
      ['DRUM-25', 4],
      ['DRUM-40', 4],
    ]);
  });

  it('takes several tyres by the scatter between them', async () => {
    const rows = ['T-1', 'T-2', 'T-3']
      .flatMap((tyre, i) =>
        [0, 1000, 2000].map((km) => `${tyre},${km},1,${3 - (0.2 + 0.1 * i) * (km / 1000)},cold\n`),
      )
      .join('');
    const rate = estimate(await wearRun(rows), 'wearRate');
    // Rates 0.2, 0.3, 0.4: mean 0.3, standard error 0.1/√3, Student's t with 2 degrees 4.302653 (table of any handbook).
    expect(rate.value).toBeCloseTo(0.3, 9);
    expect(rate.standardError).toBeCloseTo(0.1 / Math.sqrt(3), 9);
    expect(rate.interval!.upper).toBeCloseTo(0.3 + (4.302653 * 0.1) / Math.sqrt(3), 6);
    expect(rate.specimens).toBe(3);
  });

  it('reads events, raises those that are departures, and refuses a time without an offset', async () => {
    const events =
      'time,specimen,event,value\n2026-03-02T05:00:00Z,T-1,top-up,0.1 bar\n2026-03-02T06:00:00Z,,start,\n';
    writeFileSync(join(folder, 'events.csv'), events);
    const result = await wearRun(readings(worn), undefined, 'events: events.csv\n');
    expect(result.conformance).toMatchObject({
      status: 'deviating',
      deviations: [{ code: 'DRUM-09', line: 2, specimen: 'T-1' }],
    });
    expect(result.notes.join('\n')).toContain('"start"');
    writeFileSync(join(folder, 'events.csv'), events.replace('05:00:00Z', '05:00:00'));
    await expect(wearRun(readings(worn), undefined, 'events: events.csv\n')).rejects.toMatchObject({
      problems: [{ code: 'bad-time', line: 2, column: 1 }],
    });
  });
});
