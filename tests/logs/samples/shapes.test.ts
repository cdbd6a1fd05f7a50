import { describe, expect, it } from 'vitest';
import { PLAIN_SAMPLES } from '../../../src/logs/samples/dialect.ts';
import { openSampleLog } from '../../../src/logs/samples/head.ts';
import { PartScanner, partsOf } from '../../../src/logs/samples/part.ts';
import { seeded } from '../../endurance/drum-log.ts';
import { logFolder } from './log-files.ts';

const folder = logFolder();

/** Columns that a log may have, and how a cell of each is made: its text, and the whole steps that it means. */
const COLUMNS: readonly { title: string; decimals: number; cell: (random: () => number) => string }[] = [
  {
    title: 'speed [km/h]',
    decimals: 4,
    cell: (random) => (random() < 0.02 ? -random() : 10 + random() * 40).toFixed(2),
  },
  { title: 'load [N]', decimals: 3, cell: (random) => (600 + random() * 399).toFixed(1) },
  {
    title: 'pressure [bar]',
    decimals: 4,
    cell: (random) => (random() < 0.02 ? '' : (random() * 3).toFixed(2)),
  },
  { title: 'tyre temperature [°C]', decimals: 3, cell: (random) => (-10 - random() * 20).toFixed(1) },
  {
    title: 'axle height [mm]',
    decimals: 4,
    cell: (random) => (random() < 0.01 ? '-9999' : (random() * 9).toFixed(4)),
  },
  { title: 'distance [km]', decimals: 6, cell: (random) => (1000 + random() * 8000).toFixed(6) },
  { title: 'revolutions', decimals: 3, cell: (random) => String(Math.floor(1e9 + random() * 3e9)) },
  { title: 'motor power [W]', decimals: -1, cell: (random) => (100 + random() * 899).toFixed(1) },
  {
    title: 'remark',
    decimals: -1,
    cell: (random) => (random() < 0.01 ? '"a, b"' : random() < 0.02 ? 'é~' : 'ok}'),
  },
  { title: 'state', decimals: -1, cell: (random) => (random() < 0.05 ? 'stop' : 'run') },
];

/** Steps by shifting the decimal point in the text: no arithmetic in binary fractions. */
function stepsOf(text: string, decimals: number): number {
  if (text === '' || text === '-9999') return Number.NaN;
  const [whole, fraction = ''] = text.replace('-', '').split('.') as [string, string?];
  const steps = Number(whole + fraction.padEnd(decimals, '0'));
  return text.startsWith('-') && steps !== 0 ? -steps : steps;
}

describe('PartScanner', () => {
  it.each(Array.from({ length: 30 }, (_, seed) => seed + 1))(
    'reads rows that keep a shape as it reads any other: columns in random order, log %i',
    (seed) => {
      const random = seeded(seed);
      const chosen = COLUMNS.filter(({ title }) => /speed|load/.test(title) || random() < 0.7);
      const columns = [...chosen, null].sort(() => random() - 0.5);
      const decimals = Math.floor(random() * 4);
      const offset = ['Z', '+01:00', '-0330', '+05'][seed % 4]!;
      let now = Date.UTC(2026, 2, 28, 23, 50, 0);
      const expected: { time: number; steps: number[] }[] = [];
      const lines = Array.from({ length: 500 }, () => {
        now += random() < 0.01 ? 7_000_000 : 100 * Math.floor(1 + random() * 40);
        const time = decimals === 0 ? Math.floor(now / 1000) * 1000 : now;
        const steps: number[] = [];
        const cells = columns.map((column) => {
          if (!column) {
            const text = new Date(time).toISOString();
            return text.slice(0, decimals === 0 ? 19 : 20 + decimals) + offset;
          }
          const text = column.cell(random);
          const place = COLUMNS.filter(({ decimals }) => decimals >= 0).indexOf(column);
          if (place >= 0) steps[place] = stepsOf(text, column.decimals);
          return text;
        });
        const east = { Z: 0, '+01:00': 60, '-0330': -210, '+05': 300 }[offset]!;
        expected.push({ time: time - east * 60_000, steps: steps.flat() });
        return cells.join(',');
      });
      const header = columns.map((column) => column?.title ?? 'time').join(',');
      const path = folder.write('shapes.csv', [header, ...lines, ''].join('\n'));
      const log = openSampleLog(path, { ...PLAIN_SAMPLES, sentinels: ['-9999'] });
      const rows: { time: number; steps: number[] }[] = [];
      const scanner = new PartScanner(log.layout, { window: 5000, capacity: 100 });
      for (const part of partsOf(path, log.layout.bodyOffset, log.size, 20_000)) {
        const { problems } = scanner.scan(part, (batch) => {
          for (let row = 0; row < batch.rows; row++) {
            rows.push({ time: batch.time[row]!, steps: batch.values.map((column) => column[row]!) });
          }
        });
        expect(problems).toEqual([]);
      }
      expect(rows).toEqual(expected);
    },
  );

  it('finds in a row of a known shape what it finds in a row that comes first, whatever byte is changed', () => {
    const header = 'time,remark,speed [km/h],load [N],pressure [bar],distance [km],revolutions,state';
    const row = (i: number): string =>
      `2026-03-02T06:00:0${i % 10}.5+01:00,r${i % 10}x,29.98,-51.3,,1234.567891,123456789${i % 10},run`;
    const scan = (lines: readonly string[]) => {
      const path = folder.write('bytes.csv', [header, ...lines, ''].join('\n'));
      const log = openSampleLog(path, { ...PLAIN_SAMPLES, sentinels: ['-51.4'] });
      const rows = new Map<number, unknown>();
      const [part] = partsOf(path, log.layout.bodyOffset, log.size, 1e9);
      const found = new PartScanner(log.layout).scan(part!, (batch) => {
        for (let i = 0; i < batch.rows; i++) {
          const steps = batch.values.map((column) => column[i]);
          rows.set(batch.line[i]!, [batch.time[i], batch.states[batch.state[i]!], steps]);
        }
      });
      return { rows, problems: found.problems, tallies: found.tallies };
    };
    const bytes = '/:;.,-+ 09A\0"\r\x7fé';
    const changed: string[] = [];
    for (let at = 0; at < row(0).length; at++) {
      for (const byte of bytes) changed.push(row(4).slice(0, at) + byte + row(4).slice(at + 1));
    }
    // Enough rows before each that the shape is known, and trying it has paid.
    const regular = Array.from({ length: 9 }, (_, i) => row(i));
    // In stretches, since of each code the first twenty are kept.
    for (let from = 0; from < changed.length; from += 19) {
      const stretch = changed.slice(from, from + 19);
      const known = scan(stretch.flatMap((line) => [...regular, line]));
      for (const [i, line] of stretch.entries()) {
        const alone = scan([line]);
        const at = 10 * i + 9;
        expect(known.rows.get(at), line).toEqual(alone.rows.get(0));
        const here = known.problems.filter((problem) => problem.line === at);
        const told = ({ column, code }: (typeof here)[number]) => [column, code];
        expect(here.map(told), line).toEqual(alone.problems.map(told));
      }
    }
  });
});
