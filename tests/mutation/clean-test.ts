import type { ImpactProtocol } from '../../src/documents/kinds.ts';
import { ruleFor } from '../../src/impact/rules/method-rules.ts';
import { NO_PROGRESS } from '../../src/impact/rules/stop.ts';
import { type RandomStream, randomStream } from '../../src/statistics/random/random-stream.ts';
import { loadedProtocol } from './protocols.ts';

// Tests as a lab that makes no mistake writes them, with realistic noise in every column: the protocol's own rule says
// the heights, tyres of random strength the outcomes. Invented; nothing in it comes from the checks.

export type Kind = 'up-and-down' | 'rising-height' | 'session';
export type Cells = Record<string, string>;

/** A table as it will be written: column titles, and rows by title. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: Cells[];
}

export interface CleanTest {
  readonly kind: Kind;
  readonly protocolText: string;
  readonly drops: Table;
  readonly specimens: Table;
  readonly mountings: Table;
  readonly checks: Table;
  readonly amendments: Table;
  /** Behind the last row of the log: the beginning of one that was never finished. */
  tail: string;
}

/** What is about to be dropped: how a fault that the operator acted on gets into the test itself. */
export interface Planned {
  readonly index: number;
  /** Which hit of its tyre it is, from 1, and which tyre. */
  readonly hit: number;
  readonly tyre: number;
  readonly height: number;
  readonly last: { readonly height: number; readonly failed: boolean } | null;
}

export interface Hooks {
  height?(planned: Planned): number;
  failed?(planned: Planned, natural: boolean): boolean;
  /** A word that spoils the drop, which is then repeated. */
  spoil?(planned: Planned): Cells | null;
  /** Drops at which the series ends early, or beyond its stop. */
  drops?: number;
  /** Constructions in blocks, operators by construction. */
  blocked?: boolean;
  operators?: readonly [string, string];
}

const STEP = 25;
const DAY = ['2026-03-09', '2026-03-10', '2026-03-11'] as const;

export function cleanTest(seed: number, kind: Kind, hooks: Hooks = {}): CleanTest {
  const random = randomStream(seed, KINDS.indexOf(kind));
  const { protocol, text } = loadedProtocol(kind);
  const drops: Cells[] = [];
  const names = kind === 'session' ? ['C-114', 'C-115'] : ['C-114'];
  const series = names.map((name, i) => simulate(protocol, name, i, random, hooks));
  const order = interleaved(series, random, hooks.blocked === true);
  const clock = { day: 0, second: 0, inDay: 0 };
  const perDay = Math.ceil(order.length / DAY.length);
  const first = 1 + Math.floor(random.uniform() * 40);
  for (const [i, cells] of order.entries()) {
    if (clock.inDay >= perDay && cells.hit === '1')
      Object.assign(clock, { day: clock.day + 1, second: 0, inDay: 0 });
    clock.inDay += 1;
    clock.second += 120 + Math.floor(random.uniform() * 120);
    const { hit: _, ...rest } = cells;
    drops.push({ drop: `${first + i}`, time: time(clock.day, clock.second), ...rest });
  }
  if (hooks.operators && kind === 'session') {
    for (const row of drops) row.operator = hooks.operators[row.series === 'C-114' ? 0 : 1];
  }
  const tyres = [...new Map(drops.map((row) => [row.specimen!, row])).values()];
  return {
    kind,
    protocolText: text,
    drops: { columns: Object.keys(drops[0]!), rows: drops },
    specimens: register(tyres, random),
    mountings: mountings(tyres, random),
    checks: checks(random),
    amendments: { columns: ['line', 'what', 'old', 'new', 'reason', 'by', 'on'], rows: [] },
    tail: '',
  };
}

const KINDS: readonly Kind[] = ['up-and-down', 'rising-height', 'session'];

/** One series by its rule; each row remembers which hit of its tyre it is. */
function simulate(
  protocol: ImpactProtocol,
  construction: string,
  index: number,
  random: RandomStream,
  hooks: Hooks,
): Cells[] {
  const rule = ruleFor(protocol, null);
  const median = 600 + 25 * index + 20 * (random.uniform() - 0.5);
  const rows: Cells[] = [];
  let state = rule.start;
  let tyre = 0;
  let hit = 0;
  let strength = 0;
  let turn = 0;
  let last: Planned['last'] = null;
  let steps = 0;
  for (;;) {
    if (hooks.drops === undefined ? rule.advice(state).decision === 'stop' : steps >= hooks.drops) break;
    // Whoever goes on beyond the stop goes on by the rule.
    const advice = rule.advice({ ...state, progress: NO_PROGRESS });
    const isNew = advice.decision === 'height' ? advice.specimen !== 'same' : true;
    if (isNew) {
      tyre += 1;
      hit = 0;
      // Clear of the ends of a rise: what happens there is told by notes.
      strength = Math.max(480, Math.min(780, median + 40 * random.normal()));
      turn = 40 + Math.floor(random.uniform() * 30);
    }
    hit += 1;
    const asked: number = advice.decision === 'height' ? advice.height : last!.height;
    const planned: Planned = { index: rows.length, hit, tyre, height: asked, last };
    const height: number = hooks.height?.(planned) ?? asked;
    const failed = hooks.failed?.(planned, strength <= height) ?? strength <= height;
    const name = `${construction}-${String(tyre).padStart(2, '0')}`;
    const site =
      protocol.method === 'rising-height' ? turn + (hit - 1) * 24 : 40 + Math.floor(random.uniform() * 280);
    const row = cellsOf({ protocol, construction, name, site: site % 360, height, failed, hit }, random);
    const spoilt = hooks.spoil?.(planned) ?? null;
    rows.push({ ...row, ...spoilt });
    if (spoilt !== null) {
      // A drop that does not count is repeated at its height, on another tyre.
      if (protocol.method !== 'rising-height') continue;
      hit -= 1;
      continue;
    }
    steps += 1;
    last = { height, failed };
    state = rule.step(state, { height, outcome: failed ? 'failed' : 'survived', specimen: name, hit });
  }
  return rows;
}

function cellsOf(
  made: {
    protocol: ImpactProtocol;
    construction: string;
    name: string;
    site: number;
    height: number;
    failed: boolean;
    hit: number;
  },
  random: RandomStream,
): Cells {
  const { protocol, construction, name, site, height, failed, hit } = made;
  const measured = height + clipped(0.25, 0.8, random);
  const temperature = 23 + clipped(0.5, 1.7, random);
  const free = Math.sqrt((2 * 9.80665 * measured) / 1000);
  const pressure = 2 + clipped(0.008, 0.03, random);
  const after = failed ? 0.4 * random.uniform() : pressure - 0.02 * random.uniform();
  return {
    series: construction,
    specimen: name,
    'site [deg]': `${site}`,
    'planned height [mm]': `${height}`,
    'height [mm]': measured.toFixed(1),
    'mass [kg]': (8 + clipped(0.002, 0.006, random)).toFixed(3),
    'pressure [bar]': pressure.toFixed(3),
    'pressure after [bar]': after.toFixed(3),
    'leak check': 'water-bath',
    'temperature [°C]': temperature.toFixed(1),
    'velocity [m/s]': (free * (0.995 + clipped(0.0015, 0.004, random))).toFixed(4),
    outcome: failed ? 'failed' : 'survived',
    damage: failed
      ? ['pinch-two-cuts', 'pinch-one-cut@sidewall', 'casing-cut-tread'][Math.floor(3 * random.uniform())]!
      : '',
    valid: 'yes',
    reason: '',
    operator: random.uniform() < 0.5 ? 'T1' : 'T2',
    hits: '1',
    catcher: 'in-time',
    rig: 'drop-2@2026-03',
    'set temperature [°C]': (temperature + clipped(0.4, 1.2, random)).toFixed(1),
    gauge: 'G-07',
    'second reading': failed ? 'failed' : 'survived',
    'failure criterion': 'loss of air within 60 s',
    protocol: `${protocol.id}@${protocol.version}`,
    hit: `${hit}`,
  };
}

/** Whole tyres in random order, as a randomised session takes them. */
function interleaved(series: readonly Cells[][], random: RandomStream, blocked: boolean): Cells[] {
  if (series.length === 1 || blocked) return series.flat();
  const next = series.map(() => 0);
  const order: Cells[] = [];
  for (;;) {
    const open = series.flatMap((rows, i) => (next[i]! < rows.length ? [i] : []));
    if (open.length === 0) return order;
    // Two of one construction first, so that no session comes out in blocks by chance.
    const pick =
      order.length < 4
        ? open[order.length % open.length]!
        : open[Math.floor(random.uniform() * open.length)]!;
    order.push(series[pick]![next[pick]!]!);
    next[pick]! += 1;
  }
}

function register(tyres: readonly Cells[], random: RandomStream): Table {
  const columns = [
    'specimen',
    'construction',
    'role',
    'mass [g]',
    'width [mm]',
    'diameter [mm]',
    'batch',
    'cured',
    'conditioned from',
    'conditioned to',
    'history',
  ];
  const rows = tyres.map((row) => ({
    specimen: row.specimen!,
    construction: row.series!,
    role: 'candidate',
    'mass [g]': `${Math.round(903 + 9 * random.normal())}`,
    'width [mm]': (61.8 + clipped(0.3, 0.9, random)).toFixed(1),
    'diameter [mm]': (740 + clipped(0.3, 0.8, random)).toFixed(1),
    batch: 'B07',
    cured: `2026-01-${String(10 + Math.floor(random.uniform() * 15)).padStart(2, '0')}`,
    'conditioned from': before(row.time!, 20 + random.uniform() * 10),
    'conditioned to': before(row.time!, 0.1 + random.uniform() * 0.5),
    history: random.uniform() < 0.5 ? 'virgin' : '',
  }));
  return { columns, rows };
}

function mountings(tyres: readonly Cells[], random: RandomStream): Table {
  const columns = [
    'specimen',
    'from drop',
    'rim',
    'rim width [mm]',
    'rim type',
    'tube',
    'tube material',
    'tube batch',
    'sealant [ml]',
    'insert',
    'torque [Nm]',
    'zero set',
  ];
  const rows = tyres.map((row, i) => ({
    specimen: row.specimen!,
    'from drop': '',
    rim: random.uniform() < 0.5 ? 'R-1' : 'R-2',
    'rim width [mm]': '25',
    'rim type': 'TC',
    tube: `U-${100 + i}`,
    'tube material': 'butyl',
    'tube batch': 'K3',
    'sealant [ml]': '0',
    insert: 'none',
    'torque [Nm]': (15 + clipped(0.3, 1, random)).toFixed(1),
    'zero set': random.uniform() < 0.7 ? 'yes' : 'no',
  }));
  return { columns, rows };
}

function checks(random: RandomStream): Table {
  const columns = [
    'time',
    'check',
    'rig',
    'result',
    'value',
    'lower',
    'upper',
    'gauge',
    'due',
    'by',
    'settled',
  ];
  const empty = Object.fromEntries(columns.map((name) => [name, '']));
  const rows = DAY.flatMap((_, day) => [
    { ...empty, time: time(day, -1800), check: 'daily', result: 'passed', by: 'T1' },
    {
      ...empty,
      time: time(day, -1200),
      check: 'reference',
      value: (41.2 + clipped(0.4, 1.2, random)).toFixed(2),
      lower: '39.7',
      upper: '42.7',
    },
    { ...empty, time: time(day, -2400), check: 'base', result: 'passed' },
  ]);
  const gauge = { ...empty, time: time(0, -86_400 * 60), check: 'gauge', gauge: 'G-07', due: '2026-12-31' };
  return { columns, rows: [gauge, ...rows] };
}

/** Seconds after eight in the morning of a test day, local time. */
export function time(day: number, second: number): string {
  return isoAt(Date.parse(`${DAY[Math.min(day, DAY.length - 1)]}T08:00:00Z`) + second * 1000);
}

export function before(iso: string, hours: number): string {
  return isoAt(Date.parse(iso) + 3_600_000 - hours * 3_600_000);
}

function isoAt(wall: number): string {
  return `${new Date(wall).toISOString().slice(0, 19)}+01:00`;
}

function clipped(spread: number, most: number, random: RandomStream): number {
  return Math.max(-most, Math.min(most, spread * random.normal()));
}

export { STEP };
