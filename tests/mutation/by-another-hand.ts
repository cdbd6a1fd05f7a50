import { type RandomStream, randomStream } from '../../src/statistics/random/random-stream.ts';

// Tests of a lab that makes no mistake, written without the program's rules and without clean-test.ts: heights, stops
// and tyres are worked out here from the words of the methods (CONTRACT: up-and-down, rising-height, fixed-level), and
// the log has now these columns, now others. Invented numbers.

export interface WrittenTest {
  readonly kind: string;
  readonly protocol: string;
  readonly log: string;
  readonly specimens: string;
}

interface Blow {
  readonly tyre: string;
  readonly construction: string;
  readonly height: number;
  readonly failed: boolean;
  readonly turn: number;
}

type Maker = (random: RandomStream) => { readonly method: string; readonly blows: readonly Blow[] };

const pick = <Item>(items: readonly Item[], random: RandomStream): Item =>
  items[Math.floor(items.length * random.uniform())]!;
const around = (middle: number, most: number, random: RandomStream): number =>
  middle + most * (2 * random.uniform() - 1);

/** Down one after a failure, up one after a survival, each tyre hit once. */
function staircase(random: RandomStream, prefix: string, count: number, start: number, next: Step): Blow[] {
  const blows: Blow[] = [];
  let level = 0;
  for (let i = 0; i < count; i++) {
    const height = next(start, level);
    // A strength scatters by a twentieth about some level near the start: both outcomes come up.
    const strength = start * around(1.02, 0.05, random);
    const failed = strength <= height;
    blows.push({ tyre: `${prefix}${i + 1}`, construction: prefix, height, failed, turn: 90 });
    level += failed ? -1 : 1;
  }
  return blows;
}
type Step = (start: number, level: number) => number;

const MAKERS: Readonly<Record<string, Maker>> = {
  'up-and-down, equal steps': (random) => {
    const start = pick([400, 520, 650], random);
    const step = pick([15, 20, 30], random);
    const count = pick([20, 24, 30], random);
    const method = `method: up-and-down\nstart: ${start} mm\nstep: ${step} mm\nstop: { drops: ${count} }`;
    return { method, blows: staircase(random, 'A', count, start, (from, k) => from + k * step) };
  },
  'up-and-down, steps of a ratio': (random) => {
    const start = pick([400, 500], random);
    const method = `method: up-and-down\nstart: ${start} mm\nstep: 4 %\nstop: { drops: 24 }`;
    return { method, blows: staircase(random, 'R', 24, start, (from, k) => from * 1.04 ** k) };
  },
  'rising height': (random) => {
    const tyres = pick([6, 8], random);
    const blows = Array.from({ length: tyres }, (_, i) => {
      const strength = around(520, 90, random);
      const rise: Blow[] = [];
      for (let height = 400, turn = 30; ; height += 20, turn += 30) {
        const failed = strength <= height;
        rise.push({ tyre: `H-${i + 1}`, construction: 'H', height, failed, turn: turn % 360 });
        if (failed) return rise;
      }
    });
    const method = `method: rising-height\nstart: 400 mm\nstep: 20 mm\nlimits: { max: 900 mm }\nsites: { spacing: 30 deg }\nstop: { specimens: ${tyres} }`;
    return { method, blows: blows.flat() };
  },
  'fixed levels': (random) => {
    const levels = [450, 500, 550, 600];
    const each = pick([6, 8], random);
    const blows = levels.flatMap((height) =>
      Array.from({ length: each }, (_, i) => ({
        tyre: `F${height}.${i}`,
        construction: 'F',
        height,
        failed: around(525, 120, random) <= height,
        turn: 90,
      })),
    );
    return {
      method: `method: fixed-level\nlevels: [${levels.map((height) => `${height} mm`).join(', ')}]\nperLevel: ${each}`,
      blows,
    };
  },
  'two constructions in turn': (random) => {
    const one = staircase(random, 'P', 20, 500, (from, k) => from + k * 25);
    const other = staircase(random, 'Q', 20, 500, (from, k) => from + k * 25);
    const blows = one.flatMap((blow, i) => (i % 2 === 0 ? [blow, other[i]!] : [other[i]!, blow]));
    return { method: 'method: up-and-down\nstart: 500 mm\nstep: 25 mm\nstop: { drops: 20 }', blows };
  },
};

export const WRITTEN_KINDS = Object.keys(MAKERS);

/** A test without a departure, as files. */
export function writtenTest(kind: string, seed: number): WrittenTest {
  const random = randomStream(seed, WRITTEN_KINDS.indexOf(kind) + 500);
  const { method, blows } = MAKERS[kind]!(random);
  const inInches = random.uniform() < 0.3;
  const has = { number: random.uniform() < 0.7, speed: random.uniform() < 0.5, air: random.uniform() < 0.7 };
  const head = [
    ...(has.number ? ['drop'] : []),
    'time',
    'specimen',
    'site [deg]',
    inInches ? 'height [in]' : 'height [mm]',
    ...(has.speed ? ['velocity [m/s]'] : []),
    ...(has.air ? ['pressure [psi]', 'pressure after [psi]', 'temperature [°F]'] : []),
    'outcome',
    'operator',
  ];
  const operators = ['K', 'L'];
  let clock = Date.parse('2026-05-04T07:00:00Z');
  const rows = blows.map((blow, i) => {
    clock += 1000 * around(200, 100, random);
    const height = around(blow.height, 0.6, random);
    const psi = around(29, 0.4, random);
    return [
      ...(has.number ? [`${i + 1}`] : []),
      new Date(clock).toISOString().replace(/\.\d+Z$/, 'Z'),
      blow.tyre,
      `${blow.turn}`,
      inInches ? (height / 25.4).toFixed(3) : height.toFixed(1),
      ...(has.speed
        ? [(Math.sqrt((2 * 9.80665 * height) / 1000) * around(0.994, 0.004, random)).toFixed(4)]
        : []),
      ...(has.air
        ? [
            psi.toFixed(2),
            (blow.failed ? 3 : psi - 0.3 * random.uniform()).toFixed(2),
            around(73.4, 2.5, random).toFixed(1),
          ]
        : []),
      blow.failed ? 'failed' : 'survived',
      operators[i % 4 < 2 ? 0 : 1],
    ].join(',');
  });
  const tyres = [...new Map(blows.map((blow) => [blow.tyre, blow])).values()];
  const table = tyres.map(({ tyre, construction }) =>
    [
      tyre,
      construction,
      around(640, 9, random).toFixed(0),
      '2026-02-11',
      '2026-05-02T08:00Z',
      '2026-05-04T06:50Z',
    ].join(','),
  );
  return {
    kind,
    protocol: `format: tirelab.protocol/1\nid: w\nversion: "1"\nkind: impact\nmass: 9.5 kg\npressure: 2.0 bar ± 0.05 bar\ntemperature: 23 °C ± 2 K\n${method}\n`,
    log: [head.join(','), ...rows, ''].join('\n'),
    specimens: ['specimen,construction,mass [g],cured,conditioned from,conditioned to', ...table, ''].join(
      '\n',
    ),
  };
}
