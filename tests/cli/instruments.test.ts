import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const folder = mkdtempSync(join(tmpdir(), 'instruments-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const REGISTER = 'fixtures/instruments/register.csv';

function store(name: string, period: object | null): void {
  const document = { schema: 'tirelab.result/1', kind: 'impact', run: name, inputs: [], period };
  writeFileSync(join(folder, `${name}.json`), JSON.stringify(document));
}

describe('tirelab instruments', () => {
  it.each([
    // The register: G-07 good until a bad check on 2026-04-13, B-02 due 2026-03-20, C-11 due 2026-04-15.
    ['2026-03-01', 0, { 'G-07': 'in-date', 'B-02': 'due', 'C-11': 'in-date', 'T-03': 'in-date' }],
    ['2026-03-20', 0, { 'G-07': 'in-date', 'B-02': 'due', 'C-11': 'due', 'T-03': 'in-date' }],
    ['2026-03-21', 1, { 'G-07': 'in-date', 'B-02': 'overdue', 'C-11': 'due', 'T-03': 'in-date' }],
    ['2026-04-20', 1, { 'G-07': 'failed', 'B-02': 'overdue', 'C-11': 'overdue', 'T-03': 'in-date' }],
  ])('says what is due on %s', async (date, expected, standings) => {
    const { status, out } = await tirelab(['instruments', REGISTER, '--as-of', date, '--json']);
    expect(status).toBe(expected);
    const { instruments, asOf } = JSON.parse(out);
    expect(asOf).toBe(date);
    const found = instruments.map(({ instrument, standing }: Record<string, string>) => [
      instrument,
      standing,
    ]);
    expect(Object.fromEntries(found)).toEqual(standings);
  });

  it('names the results between the last good and the first bad check', async () => {
    const at = (day: string, gauges: readonly string[]) => ({
      from: `${day}T08:00:00Z`,
      to: `${day}T10:00:00Z`,
      gauges,
    });
    store('a-before', at('2026-01-20', ['G-07']));
    store('b-between', at('2026-03-09', ['G-07']));
    store('c-other', at('2026-03-09', ['T-03']));
    store('d-no-gauge', at('2026-03-09', []));
    store('e-no-gauge-early', at('2026-01-20', []));
    store('f-undated', null);
    store('g-overdue', at('2026-04-01', ['B-02']));
    store('h-stranger', at('2026-03-09', ['X-99']));
    const args = ['instruments', REGISTER, '--as-of', '2026-04-20', '--results', folder];
    const { out, status } = await tirelab([...args, '--json']);
    expect(status).toBe(1);
    const { results, doubtful } = JSON.parse(out);
    expect(doubtful).toEqual([
      { instrument: 'G-07', from: '2026-02-02', bad: '2026-04-13', to: null, settled: null },
    ]);
    expect(results.map(({ run, standing }: Record<string, string>) => [run, standing])).toEqual([
      ['a-before', 'clear'],
      ['b-between', 'touched'],
      ['c-other', 'clear'],
      ['d-no-gauge', 'unknown'],
      ['e-no-gauge-early', 'clear'],
      ['f-undated', 'unknown'],
      ['g-overdue', 'overdue'],
      ['h-stranger', 'unknown'],
    ]);
    const { out: text } = await tirelab(args);
    expect(text).toContain('failed: G-07; overdue: B-02, C-11');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('reads the rows of gauges of a table of rig checks', async () => {
    const table = `time,check,rig,result,value,lower,upper,gauge,due,by,settled
2026-01-08T08:00:00+01:00,gauge,,,,,,G-07,2026-12-31,,
2026-03-09T07:30:00+01:00,daily,,passed,,,,,,T1,
`;
    const args = ['instruments', '-', '--as-of', '2026-03-09', '--json'];
    const { out, status } = await tirelab(args, { input: table });
    expect(status).toBe(0);
    expect(JSON.parse(out).instruments).toMatchObject([{ instrument: 'G-07', standing: 'in-date' }]);
  });

  it.each([
    ['a header only', 'instrument,time,result,due\n', 'no-rows', 1],
    ['a table of checks without a gauge', 'time,check,gauge\n2026-03-09,daily,\n', 'empty-register', null],
    ['a day that is none', 'instrument,time,due\nG-07,03/09/26,2026-12-31\n', 'not-a-time', 2],
    [
      'a due date before the check',
      'instrument,time,due\nG-07,2026-03-09,2025-12-31\n',
      'dates-not-ordered',
      2,
    ],
    ['a result of no known word', 'instrument,time,result\nG-07,2026-03-09,ok\n', 'unknown-word', 2],
  ])('refuses %s', async (_, input, code, line) => {
    const { status, out } = await tirelab(['instruments', '-', '--json'], { input });
    expect(status).toBe(2);
    expect(JSON.parse(out).problems).toMatchObject([{ code, line }]);
  });
});
