import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { analyzeImpact } from '../../src/jobs/analyze-impact.ts';
import { documentsOf } from '../../src/jobs/documents-of.ts';
import { readImpactTest } from '../../src/jobs/impact-test.ts';
import { replayTest } from '../../src/jobs/replay-test.ts';
import { analysisText } from '../../src/reports/text/analysis.ts';

const read = (request: Parameters<typeof documentsOf>[0]) =>
  readImpactTest(documentsOf(request, Readable.from([])));

describe('the logs of a test', () => {
  it('are read each as its own rig writes it', async () => {
    const test = await read({ kind: 'run', path: 'fixtures/rigs/two-rigs/run.yaml' });
    expect(test.logs.map(({ drops }) => drops.length)).toEqual([15, 15]);
    expect(test.logs.flatMap(({ drops }) => drops.map(({ number }) => number))).toEqual(
      Array.from({ length: 30 }, (_, i) => i + 1),
    );
    const said = test.inputs.map(({ role, path, import: imported }) => [role, path, imported?.rig]);
    expect(said).toContainEqual(['rig', 'fixtures/rigs/tower-b/rig.yaml', undefined]);
    expect(said).toContainEqual(['log', 'fixtures/rigs/two-rigs/first.csv', 'hammer-a@2026-01']);
    expect(said).toContainEqual(['log', 'fixtures/rigs/two-rigs/second.csv', 'tower-b@4']);
  });

  it('are read with the rig of the command line', async () => {
    const test = await read({
      kind: 'files',
      protocol: 'protocols/pinch-up-down.yaml',
      rig: 'fixtures/rigs/bench-e/rig.yaml',
      constructions: [],
      specification: null,
      specimens: null,
      logs: ['fixtures/rigs/bench-e/export.xlsx'],
    });
    expect(test.logs[0]!.drops).toHaveLength(30);
  });

  it('of a rig with another mass have the energy of that mass', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'rigs-'));
    try {
      writeFileSync(join(folder, 'r2.yaml'), 'format: tirelab.rig/1\nid: r2\nmass: 9 kg\n');
      writeFileSync(join(folder, 'a.csv'), 'specimen,height [mm],outcome\nT-1,500,failed\n');
      const run = `format: tirelab.run/1\nid: x\nprotocol: ${resolve('protocols/pinch-up-down.yaml')}\nrig: ${resolve('shared/rigs/drop-2.yaml')}\nlogs: [{ file: a.csv, rig: r2.yaml }]\n`;
      writeFileSync(join(folder, 'run.yaml'), run);
      const test = await read({ kind: 'run', path: join(folder, 'run.yaml') });
      const { scale, drops, replayed } = replayTest(test);
      // E = m·g·h with standard gravity, for r2 does not say where it stands. That it states
      // another mass than the protocol is told once of the rig, not of its drops.
      expect(scale.of(drops[0]!)).toBeCloseTo(9 * 9.80665 * 0.5, 10);
      const told = replayed.deviations.filter(({ code }) => code === 'DROP-11');
      expect(told).toMatchObject([{ scope: 'run', file: join(folder, 'r2.yaml') }]);
      expect(replayed.samples[0]!.key.rig).toBe('r2');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('that begin with the last rows of the one before count these once, and say so', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'rigs-'));
    try {
      const head = 'drop,time,specimen,height [mm],outcome\n';
      const row = (n: number, height: number, outcome: string) =>
        `${n},2026-03-09T08:0${n}:00Z,T-${n},${height},${outcome}\n`;
      writeFileSync(join(folder, 'rig.yaml'), 'format: tirelab.rig/1\nid: r\nexport: { encoding: utf-8 }\n');
      writeFileSync(join(folder, 'a.csv'), head + row(1, 500, 'failed') + row(2, 475, 'survived'));
      writeFileSync(join(folder, 'b.csv'), head + row(2, 475, 'survived') + row(3, 500, 'failed'));
      const run = `format: tirelab.run/1\nid: x\nprotocol: ${resolve('protocols/pinch-up-down.yaml')}\nrig: rig.yaml\nlogs: [a.csv, b.csv]\n`;
      writeFileSync(join(folder, 'run.yaml'), run);
      const result = analyzeImpact(await read({ kind: 'run', path: join(folder, 'run.yaml') }));
      expect(result.sample.drops).toBe(3);
      const imports = result.inputs.flatMap((input) => (input.role === 'log' ? [input.import!.rows] : []));
      expect(imports).toEqual([
        { read: 2, kept: 2, collapsed: 0 },
        { read: 2, kept: 1, collapsed: 1 },
      ]);
      const text = analysisText(result, { width: 400, colour: 0, unicode: true, version: '0' });
      expect(text).toMatch(/b\.csv, read as rig r writes: 1 of 2 rows kept, 1 collapsed \(written twice\)/u);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
