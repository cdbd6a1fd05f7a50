import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../src/jobs/analyze.ts';
import type { InputError } from '../../src/problem/problem.ts';
import { enduranceText } from '../../src/reports/endurance/text.ts';
import type { EnduranceResult } from '../../src/result/endurance.ts';
import { logFolder } from '../logs/samples/log-files.ts';

// By hand from fixtures/drum-two-tyres/generate.mjs: row i is 10 s and 0.1 km behind row i − 1, but for rows 720 to 779,
// in which the drum stands. 5:00 is row 0; 7:06 is row 756, 7:08 row 768, 8:40 row 1320.
const folder = logFolder();
const nothing = { async *[Symbol.asyncIterator](): AsyncGenerator<Uint8Array> {} };
const analysed = async (path: string) => (await analyze({ kind: 'run', path }, nothing)) as EnduranceResult;
const RUN = 'fixtures/drum-two-tyres/run.yaml';

describe('two tyres on one drum', () => {
  it('have a ledger each, over the positions where they stood in turn', async () => {
    const { tyres } = await analysed(RUN);
    expect(
      tyres.map(({ specimen, stints }) => [specimen, ...stints.map(({ position }) => position)]),
    ).toEqual([
      ['T-101', 'A', 'B'],
      ['T-102', 'B'],
      ['T-103', 'A'],
    ]);
    const [first, second, third] = tyres.map(({ distance }) => distance);
    // T-101: rows 0 to 719 at A, 71.9 km, and 780 to 1439 at B, 66 km; nothing outside where it stood.
    expect(first!.logged).toBeCloseTo(71.9 + 66, 9);
    expect(first!.excluded).toBe(0);
    // T-102: 71.9 km, of which rows 120 to 179 too heavy.
    expect(second!.logged).toBeCloseTo(71.9, 9);
    expect(second!.excluded).toBeCloseTo(6, 9);
    // T-103: rows 780 to 1319 (its last minute is 8:39), 54 km, of which rows 1300 to 1319 too heavy.
    expect(third!.logged).toBeCloseTo(54, 9);
    expect(third!.excluded).toBeCloseTo(2, 9);
  });

  it('have a life each, and departures with the tyre that they concern', async () => {
    const { lives, conformance, sample } = await analysed(RUN);
    expect(lives.map(({ specimen, outcome }) => [specimen, outcome])).toEqual([
      ['T-102', 'suspended'],
      ['T-103', 'failed'],
    ]);
    // At the condition 71.9 − 6 km, and 54 − 2 km up to every one of 54.
    expect(lives[0]!.lower).toBeCloseTo(65.9, 6);
    expect(lives[1]!.lower).toBeCloseTo(52, 6);
    expect(lives[1]!.upper).toBeCloseTo(54, 6);
    expect(sample).toMatchObject({ specimens: 2, failures: 1, suspensions: 1 });
    const loads = conformance.deviations.filter(({ code }) => code === 'DRUM-02');
    expect(loads.map(({ specimen, line }) => [specimen, line])).toEqual([
      ['T-102', 122],
      ['T-103', 1302],
    ]);
  });

  it('are told one by one in the text', async () => {
    const text = enduranceText(await analysed(RUN), { version: '0', width: 80, colour: 0, unicode: false });
    expect(text).toMatch(/T-101 +A, then B +137\.9/u);
    expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
  });

  it('without a word of who stood there, are positions', async () => {
    const run = await analyze(
      {
        kind: 'files',
        protocol: 'fixtures/drum-two-tyres/protocol.yaml',
        rig: null,
        constructions: [],
        specification: null,
        specimens: null,
        logs: ['fixtures/drum-two-tyres/samples.csv'],
      },
      nothing,
    );
    const { tyres } = run as EnduranceResult;
    expect(
      tyres.map(({ specimen, stints, distance }) => [specimen, stints[0]!.position, distance.excluded]),
    ).toEqual([
      [null, 'A', expect.closeTo(3, 9)],
      [null, 'B', expect.closeTo(6, 9)],
    ]);
  });

  it('refuses a position that the log does not have, and two tyres at one', async () => {
    const path = folder.write('run.yaml', '');
    const log = `${process.cwd()}/fixtures/drum-two-tyres`;
    writeFileSync(
      path,
      `format: tirelab.run/1\nid: r\nprotocol: ${log}/protocol.yaml\nlogs: [${log}/samples.csv]\nevents: events.csv\n`,
    );
    folder.write(
      'events.csv',
      'time,specimen,event,value\n2026-03-02T05:00:00Z,T-1,mounted,C\n2026-03-02T05:00:00Z,T-2,mounted,A\n2026-03-02T06:00:00Z,T-3,mounted,A\n',
    );
    const { problems } = (await analysed(path).catch((error) => error)) as InputError;
    expect(problems.map(({ line, code }) => [line, code])).toEqual([
      [2, 'unknown-position'],
      [4, 'two-tyres'],
    ]);
  });
});
