import { describe, expect, it } from 'vitest';
import { readDropLog } from '../../../src/logs/drops.ts';
import { instantOf } from '../../../src/logs/instant.ts';
import { profileOfFile } from './profile-of.ts';

const RIGS = {
  'hammer-a': 'export.csv',
  'tower-b': 'export.csv',
  'press-c': 'export.csv',
  'logger-d': 'export.txt',
  'bench-e': 'export.xlsx',
};
const FOLDER = 'fixtures/rigs';

const read = (rig: keyof typeof RIGS) =>
  readDropLog(`${FOLDER}/${rig}/${RIGS[rig]}`, profileOfFile(`${FOLDER}/${rig}/rig.yaml`));

describe('the same thirty drops as five rigs write them', () => {
  it.each(Object.keys(RIGS) as (keyof typeof RIGS)[])(
    '%s gives the records of the plain form',
    async (rig) => {
      const plain = await readDropLog('fixtures/demo/drops.csv');
      const log = await read(rig);
      const wanted = plain.drops.map(
        ({ number, specimen, site, outcome, height, pressure, temperature }, i) => ({
          number,
          specimen,
          site,
          outcome,
          height: expect.closeTo(height, 2),
          pressure: expect.closeTo(pressure!, 3),
          temperature: rig === 'logger-d' && i === 4 ? null : expect.closeTo(temperature!, 2),
        }),
      );
      expect(log.drops).toMatchObject(wanted);
      expect(log.drops.map(({ time }) => instantOf(time!))).toEqual(
        plain.drops.map(({ time }) => instantOf(time!)),
      );
      expect(log.import.rows.kept).toBe(30);
    },
  );

  it('says what became of the rows', async () => {
    expect((await read('press-c')).import).toMatchObject({
      rows: { read: 31, kept: 30, collapsed: 1 },
      segments: [
        { line: 1, rows: 17 },
        { line: 19, rows: 14 },
      ],
    });
    expect((await read('logger-d')).import).toMatchObject({
      emptied: { T: 1 },
      metadata: [{ key: 'File', value: '17' }, { key: 'Start' }],
    });
    expect((await read('bench-e')).import).toMatchObject({
      sheet: 'Drops 2026',
      metadata: [{ key: 'Test' }, { key: 'Mean' }],
    });
  });

  it("refuses another rig's export", async () => {
    const profile = profileOfFile(`${FOLDER}/hammer-a/rig.yaml`);
    await expect(
      readDropLog(`${FOLDER}/press-c/export.csv`, {
        ...profile,
        dialect: { ...profile.dialect, encoding: 'shift_jis' },
      }),
    ).rejects.toThrow(/found no line with the columns "Prüfling", "Fallhöhe", "Befund" of rig hammer-a/);
  });
});
