import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { PLAIN } from '../../src/logs/dialect.ts';
import { readDropLog } from '../../src/logs/drops.ts';
import { PLAIN_PROFILE } from '../../src/logs/export/profile.ts';
import { InputError } from '../../src/problem/problem.ts';

const stream = (text: string) => Readable.from([Buffer.from(text)]);
const read = (text: string) => readDropLog(stream(text));
const problems = (text: string) =>
  read(text).then(
    () => [],
    (error: InputError) => error.problems,
  );

describe('readDropLog', () => {
  it('reads every column of the plain form, in the units of the program', async () => {
    const log = await read(
      'drop,time,series,specimen,site [deg],planned height [mm],height [m],mass [g],pressure [kPa],' +
        'temperature [°F],velocity [km/h],outcome,damage,valid,reason,operator,remark\n' +
        '7,2026-03-01T08:00:00+01:00,A,T-1,-90,500,0.525,8005,201,73.4,11.52,failed,casing,no,DROP-16,k1," as, said "\n',
    );
    // 201 kPa is 2.01 bar, 73.4 °F is 23 °C, 11.52 km/h is 3.2 m/s: exact by the units' definitions (NIST SP 811).
    expect(log.drops).toEqual([
      {
        file: '-',
        line: 2,
        number: 7,
        time: '2026-03-01T08:00:00+01:00',
        series: 'A',
        specimen: 'T-1',
        site: 270,
        plannedHeight: 500,
        height: 525,
        mass: 8.005,
        pressure: 2.01,
        temperature: expect.closeTo(23, 10),
        velocity: expect.closeTo(3.2, 12),
        outcome: 'failed',
        damage: 'casing',
        valid: false,
        reason: 'DROP-16',
        operator: 'k1',
        remark: ' as, said ',
      },
    ]);
  });

  it('takes an empty cell as silence, of validity as yes', async () => {
    const { drops } = await read('specimen,height [mm],outcome,valid,mass [kg],drop\nT-1,500,,,,\n');
    expect(drops[0]).toMatchObject({ outcome: null, valid: true, mass: null, number: null, pressure: null });
  });

  it('knows which fields the log has a column for', async () => {
    const { columns } = await read(
      'Specimen, Planned  Height [mm],HEIGHT [mm],outcome\nT-1,500,500,failed\n',
    );
    expect([...columns].toSorted()).toEqual(['height', 'outcome', 'plannedHeight', 'specimen']);
  });

  it.each([
    ['0', 0],
    ['360', 0],
    ['-0', 0],
    ['-45', 315],
    ['12.1', 12.1],
    ['405', 45],
  ])('puts site %s at %d degrees', async (written, site) => {
    const { drops } = await read(`specimen,site [deg],height [mm],outcome\nT-1,${written},500,failed\n`);
    expect(drops[0]!.site).toBe(site);
  });

  it('says where a cell behind a quoted line break is', async () => {
    const text = 'specimen,remark,height [mm],outcome\nT-1,"a\nb",x,failed\nT-2,,y,failed\n';
    expect(await problems(text)).toMatchObject([
      { line: 3, column: 4, code: 'not-a-number' },
      { line: 4, column: 6, code: 'not-a-number' },
    ]);
  });

  it('shows twenty problems of a kind and counts the rest', async () => {
    const found = await problems(`specimen,height [mm],outcome\n${'T-1,5OO,failed\n'.repeat(1000)}`);
    expect(found).toHaveLength(21);
    expect(found[19]).toMatchObject({ line: 21, column: 5 });
    expect(found[20]!.message).toContain('980 more');
  });

  it('lists each unknown word once, with how often it was seen', async () => {
    const found = await problems(
      `specimen,height [mm],outcome\n${'T-1,500,P\nT-1,500,F\nT-1,500,P\n'.repeat(50)}`,
    );
    expect(found).toMatchObject([
      {
        line: 2,
        column: 9,
        code: 'unknown-outcome',
        message: expect.stringContaining('"P" (100 times, here first)'),
      },
      {
        line: 3,
        column: 9,
        code: 'unknown-outcome',
        message: expect.stringContaining('"F" (50 times, here first)'),
      },
    ]);
    expect(found[0]!.message).toContain('export.outcomes.failed, export.outcomes.survived');
  });

  it.each(['03/04/2025', '03/04/2025 08:15', '9.3.25', '9-3-2025 8:15'])(
    'takes %s for no date',
    async (text) => {
      const [found] = await problems(`specimen,height [mm],outcome,time\nT-1,500,failed,${text}\n`);
      expect(found).toMatchObject({ line: 2, column: 16, code: 'ambiguous-date' });
      expect(found!.message).toContain('export.time.format');
    },
  );

  it('takes a header of thousands of columns for no log', async () => {
    const found = await problems(`specimen,height [mm],outcome${',x'.repeat(5000)}\n`);
    expect(found[0]).toMatchObject({ line: 1, column: null, code: 'too-many-columns' });
    expect(found.length).toBeLessThan(30);
  });

  it('gives hash and length of the bytes', async () => {
    const path = 'fixtures/hostile/logs/truncated.csv';
    const bytes = readFileSync(path);
    const log = await readDropLog(path);
    expect(log).toMatchObject({
      path,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    });
  });

  it('reads another separator and a decimal comma where a profile says so', async () => {
    const profile = { ...PLAIN_PROFILE, dialect: { ...PLAIN, separator: ';', decimal: ',' as const } };
    const text = 'specimen;height [mm];outcome\nT-1;512,5;failed\n';
    const log = await readDropLog(stream(text), profile);
    expect(log.drops[0]!.height).toBe(512.5);
    await expect(readDropLog(stream(text.replace(',', '.')), profile)).rejects.toThrow(InputError);
  });
});
