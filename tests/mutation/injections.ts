import type { RandomStream } from '../../src/statistics/random/random-stream.ts';
import { before, type Cells, type CleanTest, cleanTest, type Hooks, type Kind, STEP } from './clean-test.ts';

/** A faulty test, and where its fault must be told: null where it is of the whole run. */
export interface Injected {
  readonly test: CleanTest;
  readonly line: number | null;
  readonly file?: 'register';
}

/** A way in which a lab departs from its protocol, put into a clean test at a random place. */
export interface Injection {
  readonly code: string;
  readonly how: string;
  readonly kind: Kind;
  inject(seed: number, random: RandomStream): Injected;
  /** Codes that follow from the same fault and may be told beside it. */
  readonly beside?: readonly string[];
}

/** Line of a row by its index: the header is line 1. */
const lineOf = (index: number) => index + 2;
const below = (count: number, random: RandomStream) => Math.floor(count * random.uniform());
const between = (low: number, high: number, random: RandomStream) => low + (high - low) * random.uniform();

/** Changes one row of a clean log. */
function onRow(
  code: string,
  how: string,
  kind: Kind,
  change: (row: Cells, random: RandomStream) => void,
  more: { beside?: readonly string[]; where?: (rows: readonly Cells[]) => number[] } = {},
): Injection {
  return {
    code,
    how,
    kind,
    ...(more.beside ? { beside: more.beside } : {}),
    inject(seed, random) {
      const test = cleanTest(seed, kind);
      const { rows } = test.drops;
      const places = more.where?.(rows) ?? [...rows.keys()];
      const index = places[below(places.length, random)]!;
      change(rows[index]!, random);
      return { test, line: lineOf(index) };
    },
  };
}

/** Changes all rows from one on. */
function fromRow(code: string, how: string, kind: Kind, column: string, value: string): Injection {
  return {
    code,
    how,
    kind,
    inject(seed, random) {
      const test = cleanTest(seed, kind);
      const { rows } = test.drops;
      const index = 1 + below(rows.length - 1, random);
      for (const row of rows.slice(index)) row[column] = value;
      return { test, line: lineOf(index) };
    },
  };
}

/** Changes what a table says of one tyre; told at the tyre's first hit. */
function onTyre(
  code: string,
  how: string,
  kind: Kind,
  table: 'specimens' | 'mountings',
  change: (row: Cells, first: Cells, random: RandomStream) => void,
): Injection {
  return {
    code,
    how,
    kind,
    inject(seed, random) {
      const test = cleanTest(seed, kind);
      const row = test[table].rows[below(test[table].rows.length, random)]!;
      const index = test.drops.rows.findIndex(({ specimen }) => specimen === row.specimen);
      change(row, test.drops.rows[index]!, random);
      return { test, line: lineOf(index) };
    },
  };
}

/** A fault that the operator made and went on from: the test is simulated anew with it. */
function simulated(
  code: string,
  how: string,
  kind: Kind,
  hooks: (index: number, random: RandomStream) => Hooks,
  place: (test: CleanTest, index: number) => number | null,
  more: { beside?: readonly string[]; from?: number; to?: number } = {},
): Injection {
  return {
    code,
    how,
    kind,
    ...(more.beside ? { beside: more.beside } : {}),
    inject(seed, random) {
      const count = cleanTest(seed, kind).drops.rows.length;
      const from = more.from ?? 0;
      const index = from + below((more.to ?? count) - from, random);
      const test = cleanTest(seed, kind, hooks(index, random));
      return { test, line: place(test, index) };
    },
  };
}

const UD: Kind = 'up-and-down';
const RISE: Kind = 'rising-height';
const at = (_: CleanTest, index: number) => lineOf(index);
const renumber = (test: CleanTest) => {
  const { rows } = test.drops;
  const first = Number(rows[0]!.drop);
  for (const [i, row] of rows.entries()) row.drop = `${first + i}`;
};
/** Rows of rises that are not a tyre's first, with the index of the tyre's hit. */
const laterHits = (rows: readonly Cells[], least = 1) =>
  [...rows.keys()].filter((i) => i >= least && rows[i - least]!.specimen === rows[i]!.specimen);
const failedRows = (rows: readonly Cells[]) => [...rows.keys()].filter((i) => rows[i]!.outcome === 'failed');
const survivedRows = (rows: readonly Cells[]) =>
  [...rows.keys()].filter((i) => rows[i]!.outcome === 'survived');

/** Makes the hook change the height of the first later hit of a rise at or after an index. */
function atLaterHit(index: number, change: (height: number) => number): Hooks {
  let done = false;
  return {
    height: ({ index: i, hit, height, last }) => {
      if (done || i < index || hit < 3 || last?.failed) return height;
      done = true;
      return change(height);
    },
  };
}

/** Line of the first row of a rise whose height is not one step above the one before. */
function oddStep({ drops }: CleanTest): number {
  const planned = drops.rows.map((row) => Number(row['planned height [mm]']));
  const odd = drops.rows.findIndex(
    (row, i) =>
      i > 0 && drops.rows[i - 1]!.specimen === row.specimen && planned[i]! - planned[i - 1]! !== STEP,
  );
  return lineOf(odd);
}

/** Every deviation that a plain or a further column shows. */
const SEEN_IN_LOGS: readonly Injection[] = [
  onRow('DROP-01', 'a height set 2 to 10 mm off its plan', UD, (row, random) => {
    const off = between(2.5, 10, random) * (random.uniform() < 0.5 ? 1 : -1);
    shift(row, off);
  }),
  onRow('DROP-01', 'the same in a rise', RISE, (row, random) => shift(row, between(2.5, 10, random))),
  simulated(
    'DROP-02',
    'a level skipped',
    RISE,
    (index) => atLaterHit(index, (height) => height + STEP),
    oddStep,
    { to: 30 },
  ),
  simulated(
    'DROP-03',
    'the height lowered',
    RISE,
    (index) => atLaterHit(index, (height) => height - 3 * STEP),
    oddStep,
    { to: 30 },
  ),
  simulated(
    'DROP-04',
    'up after a failure, down after a survival',
    UD,
    (index) => ({
      height: ({ index: i, last, height }) => (i === index && last ? 2 * last.height - height : height),
    }),
    at,
    { from: 1 },
  ),
  simulated(
    'DROP-05',
    'a double step',
    UD,
    (index) => ({
      height: ({ index: i, last, height }) => (i === index && last ? 2 * height - last.height : height),
    }),
    at,
    { from: 1 },
  ),
  simulated(
    'DROP-06',
    'another start',
    UD,
    (_, random) => {
      const off = (2 + below(3, random)) * STEP;
      return { height: ({ index: i, height }) => (i === 0 ? height + off : height) };
    },
    () => 2,
    { to: 1 },
  ),
  {
    code: 'DROP-06',
    how: 'one tyre of a rise starts lower',
    kind: RISE,
    inject(seed, random) {
      const tyre = 1 + below(10, random);
      const test = cleanTest(seed, RISE, {
        height: ({ hit, tyre: which, height }) => (which === tyre && hit === 1 ? height - 2 * STEP : height),
      });
      return { test, line: firstLine(test, tyre) };
    },
  },
  {
    code: 'DROP-07',
    how: 'the first hit fails',
    kind: RISE,
    inject(seed, random) {
      const tyre = 1 + below(10, random);
      const test = cleanTest(seed, RISE, {
        failed: ({ hit, tyre: which }, natural) => natural || (which === tyre && hit === 1),
      });
      return { test, line: firstLine(test, tyre) };
    },
  },
  {
    code: 'DROP-08',
    how: 'no failure up to the highest level',
    kind: RISE,
    inject(seed, random) {
      const tyre = 1 + below(10, random);
      const test = cleanTest(seed, RISE, {
        failed: ({ tyre: which }, natural) => natural && which !== tyre,
      });
      const name = `C-114-${String(tyre).padStart(2, '0')}`;
      return { test, line: lineOf(test.drops.rows.findLastIndex(({ specimen }) => specimen === name)) };
    },
  },
  simulated(
    'DROP-09',
    'one outcome only',
    UD,
    (_, random) => {
      const failed = random.uniform() < 0.5;
      return { failed: () => failed };
    },
    () => null,
  ),
  simulated(
    'DROP-10',
    'ended before its stop',
    UD,
    (index) => ({ drops: index }),
    () => null,
    { from: 20, to: 30 },
  ),
  onRow('DROP-11', 'another mass', UD, (row, random) => {
    row['mass [kg]'] = (8 * between(1.008, 1.06, random)).toFixed(3);
  }),
  onRow('DROP-12', 'friction', UD, (row, random) => {
    row['velocity [m/s]'] = (free(row) * between(0.95, 0.977, random)).toFixed(4);
  }),
  onRow('DROP-13', 'too fast', UD, (row, random) => {
    row['velocity [m/s]'] = (free(row) * between(1.015, 1.06, random)).toFixed(4);
  }),
  onRow('DROP-14', 'no velocity', UD, (row) => {
    row['velocity [m/s]'] = '';
  }),
  {
    code: 'DROP-15',
    how: 'the speed drifts over a day',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const days = byDay(test);
      const day = days[below(days.length, random)]!;
      const end = between(0.015, 0.018, random);
      for (const [i, index] of day.entries()) {
        const row = test.drops.rows[index]!;
        const noise = 0.0008 * random.normal();
        row['velocity [m/s]'] = (free(row) * (1.003 - (end * i) / (day.length - 1) + noise)).toFixed(4);
      }
      return { test, line: lineOf(day.at(-1)!) };
    },
  },
  onRow('DROP-16', 'two hits counted', UD, (row) => {
    row.hits = '2';
  }),
  onRow(
    'DROP-16',
    'the catcher missed',
    RISE,
    (row) => {
      row.catcher = 'missed';
    },
    { beside: ['DROP-07'] },
  ),
  onRow('DROP-17', 'the catcher touched first', UD, (row) => {
    row.catcher = 'early';
  }),
  fromRow('DROP-19', 'another configuration of the rig', UD, 'rig', 'drop-2@2026-05'),
  onRow('DROP-21', 'pressure out of its band', UD, (row, random) => {
    const off = between(0.06, 0.3, random) * (random.uniform() < 0.5 ? 1 : -1);
    row['pressure [bar]'] = (2 + off).toFixed(3);
    if (row.outcome === 'survived') row['pressure after [bar]'] = row['pressure [bar]'];
  }),
  {
    code: 'DROP-22',
    how: 'pressure not set again',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const { rows } = test.drops;
      const places = laterHits(rows, 3);
      const index = places[below(places.length, random)]!;
      // The hit before the fall is lower than its beginning, the one after it was set anew.
      for (const [i, pressure] of [2.045, 2.024, 2.003, 1.98].entries()) {
        rows[index - 3 + i]!['pressure [bar]'] = pressure.toFixed(3);
      }
      if (rows[index - 4]?.specimen === rows[index]!.specimen) rows[index - 4]!['pressure [bar]'] = '2.000';
      return { test, line: lineOf(index) };
    },
  },
  onRow('DROP-23', 'pressure set in the cold', UD, (row, random) => {
    row['set temperature [°C]'] = (Number(row['temperature [°C]']) - between(3.2, 9, random)).toFixed(1);
  }),
  fromRow('DROP-24', 'another gauge', UD, 'gauge', 'G-11'),
  onRow('DROP-25', 'temperature out of its band', UD, (row, random) => {
    row['temperature [°C]'] = (23 + between(2.2, 9, random)).toFixed(1);
    row['set temperature [°C]'] = row['temperature [°C]']!;
  }),
  onRow('DROP-31', 'the same spot again', RISE, () => {}, {}),
  onRow('DROP-32', 'on the valve', UD, (row, random) => {
    row['site [deg]'] = `${(below(39, random) + 341) % 360}`;
  }),
  {
    code: 'DROP-33',
    how: 'a tyre hit a second time',
    kind: UD,
    beside: ['DROP-50'],
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const { rows } = test.drops;
      const index = 2 + below(rows.length - 2, random);
      const earlier = [...rows.keys()].filter((i) => i < index && rows[i]!.outcome === 'survived');
      const other = earlier[below(earlier.length, random)]!;
      rows[index]!.specimen = rows[other]!.specimen!;
      rows[index]!['site [deg]'] = `${((Number(rows[other]!['site [deg]']) + 60) % 280) + 40}`;
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-34',
    how: 'hit again after its failure',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const index = addAfterFailure(test, random);
      return { test, line: lineOf(index) };
    },
  },
  fault36(),
  onRow(
    'DROP-41',
    'burped at the bead',
    UD,
    (row) => {
      row.damage = 'bead-burp';
    },
    { where: failedRows },
  ),
  onRow(
    'DROP-42',
    'leak at the valve',
    UD,
    (row, random) => {
      row.damage = ['tube-valve', 'tube-seam', 'rim-tape'][below(3, random)]!;
    },
    { where: failedRows },
  ),
  simulated(
    'DROP-44',
    'no outcome',
    UD,
    (index, random) => {
      const outcome = random.uniform() < 0.5 ? '' : 'not-evaluable';
      let spoilt = false;
      return {
        spoil: ({ index: i }) => {
          if (i !== index || spoilt) return null;
          spoilt = true;
          return { outcome, damage: '', 'second reading': '' };
        },
      };
    },
    at,
    { to: 30 },
  ),
  onRow('DROP-45', 'a second reader sees another outcome', UD, (row) => {
    row['second reading'] = row.outcome === 'failed' ? 'survived' : 'failed';
  }),
  onRow(
    'DROP-45',
    'the gauge fell over a hit that was survived',
    RISE,
    (row, random) => {
      row['pressure after [bar]'] = between(0.5, 1.85, random).toFixed(2);
    },
    { where: survivedRows },
  ),
  onRow(
    'DROP-45',
    'the pressure held where a failure without a damage was noted',
    UD,
    (row) => {
      row['pressure after [bar]'] = row['pressure [bar]']!;
      row.damage = '';
    },
    { where: failedRows },
  ),
  fromRow('DROP-46', 'another failure criterion', UD, 'failure criterion', 'casing cut through'),
  fromRow('DROP-46', 'another way of looking for leaks', RISE, 'leak check', 'by-ear'),
  {
    code: 'DROP-47',
    how: 'one construction after the other',
    kind: 'session',
    inject: (seed) => {
      const test = cleanTest(seed, 'session', { blocked: true });
      return { test, line: lineOf(test.drops.rows.findIndex(({ series }) => series === 'C-115')) };
    },
  },
  {
    code: 'DROP-48',
    how: 'an operator for each construction',
    kind: 'session',
    inject: (seed) => {
      const test = cleanTest(seed, 'session', { operators: ['T1', 'T2'] });
      const { rows } = test.drops;
      return { test, line: lineOf(rows.findIndex(({ operator }) => operator !== rows[0]!.operator)) };
    },
  },
  {
    code: 'DROP-49',
    how: 'a gap in the numbers',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const { rows } = test.drops;
      const index = 1 + below(rows.length - 1, random);
      const gap = 1 + below(4, random);
      for (const row of rows.slice(index)) row.drop = `${Number(row.drop) + gap}`;
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-50',
    how: 'a long rest between two hits',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const { rows } = test.drops;
      const places = laterHits(rows);
      const index = places[below(places.length, random)]!;
      const hours = -between(0.3, 1.5, random);
      const day = rows[index]!.time!.slice(0, 10);
      for (const row of rows.slice(index)) {
        if (row.time!.startsWith(day)) row.time = before(row.time!, hours);
      }
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-51',
    how: 'the last row cut short',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const { rows } = test.drops;
      const row = `${Number(rows.at(-1)!.drop) + 1},${rows.at(-1)!.time},C-114,C-114-31,120,600,60`;
      test.tail = row.slice(0, 2 + below(row.length - 2, random));
      return { test, line: lineOf(rows.length) };
    },
  },
  onRow('DROP-52', 'a specimen that nobody registered', UD, (row) => {
    row.specimen = 'X-99';
  }),
  simulated(
    'DROP-54',
    'left out without a reason',
    UD,
    (index) => {
      let spoilt = false;
      return {
        spoil: ({ index: i }) => {
          if (i !== index || spoilt) return null;
          spoilt = true;
          return { valid: 'no', reason: '' };
        },
      };
    },
    at,
    { to: 30 },
  ),
  fromRow('DROP-55', 'another version of the protocol on the screen', UD, 'protocol', 'clean-up-down@0.9.0'),
  simulated(
    'DROP-56',
    'gone on after the stop',
    UD,
    (_, random) => ({ drops: 31 + below(6, random) }),
    () => lineOf(30),
  ),
];

/** Every deviation that only a document beside the log, or several constructions, show. */
const SEEN_IN_DOCUMENTS: readonly Injection[] = [
  {
    code: 'DROP-18',
    how: 'height not set to nought for a larger tyre',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const index = 1 + below(29, random);
      test.specimens.rows[index]!['diameter [mm]'] = (740 + between(4, 12, random)).toFixed(1);
      test.mountings.rows[index]!['zero set'] = 'no';
      const next = test.mountings.rows[index + 1];
      if (next) next['zero set'] = 'yes';
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-20',
    how: 'bolts found loose',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const days = byDay(test);
      const day = below(days.length, random);
      const last = test.drops.rows[days[day]!.at(-1)!]!;
      test.checks.rows.push({ time: before(last.time!, -0.2), check: 'base', result: 'failed' });
      return { test, line: lineOf(days[day]![0]!) };
    },
  },
  {
    code: 'DROP-24',
    how: 'the calibration of the gauge was due',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const days = byDay(test);
      const day = 1 + below(days.length - 1, random);
      test.checks.rows[0]!.due = test.drops.rows[days[day - 1]![0]!]!.time!.slice(0, 10);
      return { test, line: lineOf(days[day]![0]!) };
    },
  },
  onTyre('DROP-26', 'conditioned too short', UD, 'specimens', (row, first, random) => {
    row['conditioned from'] = before(first.time!, between(0.4, 2.9, random));
    row['conditioned to'] = before(first.time!, 0.05);
  }),
  onTyre('DROP-27', 'hit hours after its cure', RISE, 'specimens', (row, first, random) => {
    row.cured = before(first.time!, between(0.5, 15.5, random));
  }),
  {
    code: 'DROP-28',
    how: 'one construction cured weeks later',
    kind: 'session',
    inject(seed) {
      const test = cleanTest(seed, 'session');
      const rows = test.specimens.rows;
      for (const row of rows)
        if (row.construction === 'C-115')
          row.cured = `${row.cured!.replace('2026-01', '2026-03').slice(0, 8)}02`;
      return {
        test,
        file: 'register',
        line: lineOf(rows.findIndex(({ construction }) => construction === 'C-115')),
      };
    },
  },
  {
    code: 'DROP-29',
    how: 'no rig check in the morning',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const days = byDay(test);
      const day = below(days.length, random);
      const first = test.drops.rows[days[day]![0]!]!;
      const isLate = random.uniform() < 0.5;
      const keep = test.checks.rows.filter(
        (row) =>
          !(
            row.time!.startsWith(first.time!.slice(0, 10)) &&
            (row.check === 'daily' || row.check === 'reference')
          ),
      );
      if (isLate) keep.push({ time: before(first.time!, -3), check: 'daily', result: 'passed' });
      test.checks.rows.splice(0, Infinity, ...keep);
      return { test, line: lineOf(days[day]![0]!) };
    },
  },
  {
    code: 'DROP-30',
    how: 'the reference out of its limits',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const days = byDay(test);
      const day = below(days.length, random);
      const date = test.drops.rows[days[day]![0]!]!.time!.slice(0, 10);
      const row = test.checks.rows.find(
        ({ check, time }) => check === 'reference' && time!.startsWith(date),
      )!;
      row.value = (random.uniform() < 0.5 ? between(36, 39.6, random) : between(42.8, 46, random)).toFixed(2);
      return { test, line: lineOf(days[day]![0]!) };
    },
  },
  onTyre('DROP-33', 'a tyre that had run on the drum', UD, 'specimens', (row) => {
    row.history = 'drum-run';
  }),
  {
    code: 'DROP-35',
    how: 'a new tube in a failed tyre',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const index = addAfterFailure(test, random);
      const { specimen, drop } = test.drops.rows[index]!;
      const row = test.mountings.rows.find((it) => it.specimen === specimen)!;
      test.mountings.rows.push({ ...row, 'from drop': drop!, tube: 'U-900' });
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-36',
    how: 'another rim within a rise',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const { rows } = test.drops;
      const places = laterHits(rows);
      const index = places[below(places.length, random)]!;
      const row = test.mountings.rows.find((it) => it.specimen === rows[index]!.specimen)!;
      test.mountings.rows.push({ ...row, 'from drop': rows[index]!.drop!, rim: 'R-3' });
      return { test, line: lineOf(index) };
    },
  },
  onTyre('DROP-37', 'a wider rim', UD, 'mountings', (row) => {
    row['rim width [mm]'] = '30';
  }),
  onTyre('DROP-37', 'a rim of another type', RISE, 'mountings', (row) => {
    row['rim type'] = 'TSS';
  }),
  onTyre('DROP-38', 'a tube of another batch', UD, 'mountings', (row) => {
    row['tube batch'] = 'K4';
  }),
  onTyre('DROP-38', 'a tube of another material', UD, 'mountings', (row) => {
    row['tube material'] = 'latex';
  }),
  onTyre('DROP-39', 'sealant in a dry tyre', UD, 'mountings', (row, _, random) => {
    row['sealant [ml]'] = `${30 + below(60, random)}`;
  }),
  onTyre('DROP-40', 'an insert', RISE, 'mountings', (row) => {
    row.insert = 'foam-2';
  }),
  {
    code: 'DROP-43',
    how: 'a slow leak the next morning',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const { rows } = test.drops;
      const survived = [...rows.keys()].filter((i) => rows[i]!.outcome === 'survived');
      const index = survived[below(survived.length, random)]!;
      rows[index]!['second reading'] = '';
      test.amendments.rows.push({
        line: `${lineOf(index)}`,
        what: 'outcome',
        old: 'survived',
        new: 'failed',
        reason: 'DROP-43 slow leak',
        by: 'T2',
        on: '2026-03-12',
      });
      return { test, line: lineOf(index) };
    },
  },
  {
    code: 'DROP-53',
    how: 'one mass for all',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const mass = `${890 + below(20, random)}`;
      for (const row of test.specimens.rows) row['mass [g]'] = mass;
      return { test, file: 'register', line: 2 };
    },
  },
  {
    code: 'DROP-53',
    how: 'one width for all',
    kind: RISE,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const width = between(61, 62, random).toFixed(1);
      for (const row of test.specimens.rows) row['width [mm]'] = width;
      return { test, file: 'register', line: 2 };
    },
  },
];

export const INJECTIONS: readonly Injection[] = [...SEEN_IN_LOGS, ...SEEN_IN_DOCUMENTS].map(withSameSpot);

/** DROP-31 needs to know where its tyre was hit before. */
function withSameSpot(injection: Injection): Injection {
  if (injection.code !== 'DROP-31') return injection;
  return {
    ...injection,
    inject(seed, random) {
      const test = cleanTest(seed, RISE);
      const { rows } = test.drops;
      const places = laterHits(rows);
      const index = places[below(places.length, random)]!;
      const earlier = [...rows.keys()].filter(
        (i) => i < index && rows[i]!.specimen === rows[index]!.specimen,
      );
      const other = rows[earlier[below(earlier.length, random)]!]!;
      rows[index]!['site [deg]'] = `${(Number(other['site [deg]']) + below(3, random)) % 360}`;
      return { test, line: lineOf(index) };
    },
  };
}

/** A dent, and the next drop on the rim that has it. */
function fault36(): Injection {
  return {
    code: 'DROP-36',
    how: 'hit on a dented rim',
    kind: UD,
    inject(seed, random) {
      const test = cleanTest(seed, UD);
      const { rows } = test.drops;
      const rim = (row: Cells) => test.mountings.rows.find(({ specimen }) => specimen === row.specimen)!.rim;
      const next = (i: number) => rows.findIndex((row, j) => j > i && rim(row) === rim(rows[i]!));
      const places = failedRows(rows).filter((i) => next(i) > 0);
      const index = places[below(places.length, random)]!;
      rows[index]!.damage += ';rim-dent';
      return { test, line: lineOf(next(index)) };
    },
  };
}

function shift(row: Cells, off: number): void {
  const height = Number(row['height [mm]']) + off;
  const ratio = Math.sqrt(height / Number(row['height [mm]']));
  row['height [mm]'] = height.toFixed(1);
  row['velocity [m/s]'] = (Number(row['velocity [m/s]']) * ratio).toFixed(4);
}

const free = (row: Cells) => Math.sqrt((2 * 9.80665 * Number(row['height [mm]'])) / 1000);

function firstLine({ drops }: CleanTest, tyre: number): number {
  const name = `C-114-${String(tyre).padStart(2, '0')}`;
  return lineOf(drops.rows.findIndex(({ specimen }) => specimen === name));
}

/** Indices of the rows of each day. */
function byDay({ drops }: CleanTest): number[][] {
  const days = new Map<string, number[]>();
  for (const [i, row] of drops.rows.entries()) {
    const day = row.time!.slice(0, 10);
    days.set(day, [...(days.get(day) ?? []), i]);
  }
  return [...days.values()];
}

/** Adds a hit behind the failure of a random tyre, and gives its index. */
function addAfterFailure(test: CleanTest, random: RandomStream): number {
  const { rows } = test.drops;
  const places = failedRows(rows);
  const index = places[below(places.length, random)]!;
  const row = rows[index]!;
  const height = Number(row['planned height [mm]']) + STEP;
  const again = {
    ...row,
    time: before(row.time!, -0.02),
    'planned height [mm]': `${height}`,
    'height [mm]': `${height}.0`,
    'velocity [m/s]': (0.995 * Math.sqrt((2 * 9.80665 * height) / 1000)).toFixed(4),
    'site [deg]': `${(Number(row['site [deg]']) + 24) % 360}`,
  };
  rows.splice(index + 1, 0, again);
  renumber(test);
  return index + 1;
}
