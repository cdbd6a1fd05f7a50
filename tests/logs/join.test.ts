import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import type { DropLog } from '../../src/logs/drop.ts';
import { readDropLog } from '../../src/logs/drops.ts';
import { joinLogs } from '../../src/logs/join.ts';
import { InputError } from '../../src/problem/problem.ts';
import { profileOf } from './export/profile-of.ts';

async function log(path: string, rows: readonly string[], column = 'time'): Promise<DropLog> {
  const text = `specimen,${column},height [mm],outcome\n${rows.map((row) => `${row},500,failed\n`).join('')}`;
  const read = await readDropLog(Readable.from([Buffer.from(text)]));
  return { ...read, path, drops: read.drops.map((drop) => ({ ...drop, file: path })) };
}
const names = (joined: ReturnType<typeof joinLogs>) => joined.drops.map((drop) => drop.specimen).join(' ');

describe('joinLogs', () => {
  it('puts logs in order of their times, whatever the offset, and keeps file and line', async () => {
    const late = await log('a.csv', ['T-3,2026-03-01T10:00:00+01:00', 'T-4,2026-03-01T10:05:00+01:00']);
    const early = await log('b.csv', ['T-1,2026-03-01T08:30:00Z', 'T-2,2026-03-01T08:40:00Z']);
    const joined = joinLogs([late, early]);
    expect(joined.order).toBe('time');
    expect(names(joined)).toBe('T-1 T-2 T-3 T-4');
    expect(joined.drops[0]).toMatchObject({ file: 'b.csv', line: 2 });
  });

  it('interleaves logs that overlap, and keeps the order of rows within each', async () => {
    const a = await log('a.csv', ['T-1,2026-03-01T08:00Z', 'T-4,2026-03-01T08:30Z', 'T-5,2026-03-01T08:20Z']);
    const b = await log('b.csv', ['T-2,2026-03-01T08:10Z', 'T-3,2026-03-01T08:25Z']);
    expect(names(joinLogs([a, b]))).toBe('T-1 T-2 T-3 T-4 T-5');
  });

  it('takes them as given where one row has no time with an offset', async () => {
    const late = await log('a.csv', ['T-3,2026-03-01T10:00:00Z']);
    const early = await log('b.csv', ['T-1,2026-03-01T08:30:00Z', 'T-2,2026-03-01T08:40:00']);
    const joined = joinLogs([late, early]);
    expect(joined.order).toBe('given');
    expect(names(joined)).toBe('T-3 T-1 T-2');
  });

  it('refuses the same content twice, and says which', async () => {
    const a = await log('a.csv', ['T-1,2026-03-01T08:00Z']);
    const copy = await log('copy.csv', ['T-1,2026-03-01T08:00Z']);
    expect(() => joinLogs([a, copy])).toThrow(InputError);
    expect(() => joinLogs([a, copy])).toThrow(/copy\.csv: .*same content as a\.csv/);
  });
});

describe('files of one rig that overlap', () => {
  const profile = profileOf('{ time: { format: "YYYY-MM-DD hh:mm:ss", zone: "+01:00" } }');
  const file = async (path: string, rows: readonly string[]): Promise<DropLog> => {
    const text = `drop,time,specimen,height [mm],outcome\n${rows.map((row) => `${row}\n`).join('')}`;
    const read = await readDropLog(Readable.from([Buffer.from(text)]), profile);
    return { ...read, path, drops: read.drops.map((drop) => ({ ...drop, file: path })) };
  };
  const first = ['1,2026-03-09 08:06:00,T-1,500,failed', '2,2026-03-09 08:12:00,T-2,475,survived'];

  it('count a row that stands in both once', async () => {
    const joined = joinLogs([
      await file('a.csv', first),
      await file('b.csv', [first[1]!, '3,2026-03-09 08:18:00,T-3,500,failed']),
    ]);
    expect(names(joined)).toBe('T-1 T-2 T-3');
    expect(joined.collapsed).toEqual(new Map([['b.csv', 1]]));
  });

  it('are refused where they do not say the same', async () => {
    const other = await file('b.csv', ['2,2026-03-09 08:12:00,T-2,475,failed']);
    const a = await file('a.csv', first);
    expect(() => joinLogs([a, other])).toThrow(/b\.csv:2: found another row.*a\.csv on line 3/);
  });
});
