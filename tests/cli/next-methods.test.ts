import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// `next` on every rule, asked once and while the log grows. Heights are worked by hand from each rule as CONTRACT and the
// ready protocols have it; speeds are not in them.

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A drop that is made and what is to be set next: a height in mm, a mass in kg, or the stop. */
type Drop = readonly [row: string, next: number | 'stop'];

interface Case {
  /** Without drops. */
  readonly first: number;
  readonly drops: readonly Drop[];
  /** How the protocol is ended early, so that the stop is in the case too. */
  readonly stop: string;
  readonly masses?: boolean;
}

const CASES: Readonly<Record<string, Case>> = {
  'pinch-up-down': {
    first: 500,
    drops: [
      ['A,500,survived', 525],
      ['B,525,failed', 500],
      ['C,500,failed', 'stop'],
    ],
    stop: '{ drops: 3 }',
  },
  // Lowered after each failure, raised after three survivals in a row.
  'pinch-lower-tail': {
    first: 600,
    drops: [
      ['A,600,failed', 575],
      ['B,575,survived', 575],
      ['C,575,survived', 575],
      ['D,575,survived', 600],
      ['E,600,survived', 'stop'],
    ],
    stop: '{ drops: 5 }',
  },
  // Two drops, and on until the rarer outcome was seen twice.
  'pinch-falling-dart': {
    first: 625,
    drops: [
      ['A,625,survived', 650],
      ['B,650,survived', 675],
      ['C,675,failed', 650],
      ['D,650,failed', 'stop'],
    ],
    stop: '{ drops: 2, rarer: 2, atMost: 9 }',
  },
  'pinch-rising-height': {
    first: 350,
    drops: [
      ['A,350,survived', 375],
      ['A,375,failed', 350],
      ['B,350,failed', 'stop'],
    ],
    stop: '{ specimens: 2 }',
  },
  // The level that has had fewest, the lowest of those.
  'pinch-fixed-level': {
    first: 575,
    drops: [
      ['A,575,survived', 600],
      ['B,625,failed', 600],
      ['C,600,survived', 'stop'],
    ],
    stop: '{ drops: 3 }',
  },
  // Limits 300 and 1000 mm: their middle; halfway to the lower end; balanced with the drop at 650 mm, halfway to it; a
  // failure with nothing to balance it would go to the lower end, but the survival before it does.
  'pinch-one-shot': {
    first: 650,
    drops: [
      ['A,650,failed', 475],
      ['B,475,survived', 562.5],
      ['C,562.5,failed', 518.75],
      ['D,518.75,survived', 'stop'],
    ],
    stop: '{ drops: 4 }',
  },
  // Guess 500 to 800 mm, spread 30 mm: the middle; below it the lowest of halfway to the guess's end, two spreads down and as
  // far again; then the middle of the gap, wider than the spread.
  'pinch-d-optimal': {
    first: 650,
    drops: [
      ['A,650,failed', 575],
      ['B,575,survived', 612.5],
      ['C,612.5,survived', 'stop'],
    ],
    stop: '{ drops: 3 }',
  },
  'pinch-varied-mass': {
    first: 8,
    drops: [
      ['A,640,8,failed', 7.7],
      ['B,640,7.7,survived', 8],
      ['C,640,8,survived', 'stop'],
    ],
    stop: '{ drops: 3 }',
    masses: true,
  },
};

/** The ready protocol with another stop rule. */
async function protocolOf(name: string, stop: string): Promise<string> {
  const { readFileSync } = await import('node:fs');
  const text = readFileSync(`protocols/${name}.yaml`, 'utf8');
  const without = text.replace(/^stop:.*\n(?:^ {2}.*\n)*/mu, '');
  const path = join(folder, `${name}.yaml`);
  writeFileSync(path, `${without}\nstop: ${stop}\n`);
  return path;
}

const headOf = ({ masses }: Case) =>
  masses ? 'specimen,height [mm],mass [kg],outcome\n' : 'specimen,height [mm],outcome\n';

function settingOf({ decision, height, mass }: Advice, { masses }: Case): number | string {
  return decision === 'stop' ? 'stop' : masses ? mass! : height!;
}

interface Advice {
  readonly decision: string;
  readonly height: number | null;
  readonly mass: number | null;
  readonly why: string;
  readonly remaining: number;
}

describe('tirelab next by every rule', () => {
  it.each(Object.entries(CASES))('advises after each drop: %s', async (name, given) => {
    const protocol = await protocolOf(name, given.stop);
    const path = join(folder, `${name}-asked.csv`);
    writeFileSync(path, headOf(given));
    const seen: (number | string)[] = [];
    let before = Number.POSITIVE_INFINITY;
    for (const row of ['', ...given.drops.map(([text]) => `${text}\n`)]) {
      appendFileSync(path, row);
      const { status, out, err } = await tirelab(['next', '--protocol', protocol, '--json', path]);
      expect([status, err]).toEqual([0, '']);
      const advice: Advice = JSON.parse(out);
      seen.push(settingOf(advice, given));
      expect(advice.why.length).toBeGreaterThan(10);
      expect(advice.remaining).toBeLessThanOrEqual(before);
      before = advice.remaining;
    }
    expect(before).toBe(0);
    expect(seen).toEqual([given.first, ...given.drops.map(([, next]) => next)]);
  });

  it.each(Object.entries(CASES))('follows the log as it grows, to the stop: %s', async (name, given) => {
    const protocol = await protocolOf(name, given.stop);
    const path = join(folder, `${name}-followed.csv`);
    writeFileSync(path, headOf(given));
    let written = 0;
    const { status, out, err } = await tirelab(['next', '--protocol', protocol, '--follow', '--json', path], {
      onOutput(text) {
        // Each advice is answered by the next drop.
        const told = text.split('\n').length - 1;
        if (told <= written) return;
        const drop = given.drops[written++];
        if (drop !== undefined) appendFileSync(path, `${drop[0]}\n`);
      },
    });
    expect([status, err]).toEqual([0, '']);
    const seen = out
      .trim()
      .split('\n')
      .map((line) => settingOf(JSON.parse(line), given));
    expect(seen).toEqual([given.first, ...given.drops.map(([, next]) => next)]);
  });
});
