import { appendFileSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const P = 'protocols/pinch-up-down.yaml';
const R = 'protocols/pinch-rising-height.yaml';
const HEAD = 'specimen,height [mm],outcome\n';

let folder: string;
let count = 0;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function log(text: string): string {
  count += 1;
  const path = join(folder, `drops-${count}.csv`);
  writeFileSync(path, text);
  return path;
}

async function next(text: string, protocol = P) {
  const { status, out, err } = await tirelab(['next', '--protocol', protocol, '--json', log(text)]);
  return { status, err, ...JSON.parse(out) };
}

// Expected heights are worked by hand from the rules (CONTRACT: additive step, one lower after a failure, one higher after
// a survival; rising height from the start until the tyre fails). Energies: m·g·h, speeds: √(2gh), g = 9.80665 m/s².

describe('tirelab next', () => {
  it('starts at the start height where the log is empty, or a header alone', async () => {
    for (const text of ['', HEAD, `${HEAD}\n`]) {
      const found = await next(text);
      expect(found).toMatchObject({
        status: 0,
        schema: 'tirelab.next/1',
        decision: 'height',
        height: 500,
        specimen: 'new',
        remaining: 30,
      });
      expect(found.energy).toBeCloseTo(39.2266, 10);
      expect(found.impactSpeed).toBeCloseTo(Math.sqrt(2 * 9.80665 * 0.5), 12);
    }
  });

  it('lowers after a failure, raises after a survival', async () => {
    expect(await next(`${HEAD}A,500,failed\n`)).toMatchObject({
      height: 475,
      remaining: 29,
      made: { drops: 1, failures: 1 },
    });
    expect(await next(`${HEAD}A,500,survived\nB,525,survived\n`)).toMatchObject({
      height: 550,
      remaining: 28,
    });
  });

  it('advises after one drop of a rule that chooses its levels', async () => {
    // (650 + 300)/2: halfway to the lower end of 300 to 1000 mm.
    expect(await next(`${HEAD}A,650,failed\n`, 'protocols/pinch-one-shot.yaml')).toMatchObject({
      status: 0,
      height: 475,
    });
  });

  it('stops where the stop rule is reached', async () => {
    const { status, decision, height, why, remaining } = JSON.parse(
      (await tirelab(['next', 'fixtures/demo/run.yaml', '--json'])).out,
    );
    expect({ status, decision, height, remaining }).toEqual({
      status: undefined,
      decision: 'stop',
      height: null,
      remaining: 0,
    });
    expect(why).toContain('30 of 30 valid drops');
  });

  it('repeats an invalid drop at its height', async () => {
    const rows = 'A,500,survived,yes,\nB,525,failed,no,DROP-16\n';
    expect(await next(`specimen,height [mm],outcome,valid,reason\n${rows}`)).toMatchObject({
      status: 0,
      height: 525,
    });
  });

  it('goes on with the same tyre in a rise, and takes a new one after its failure', async () => {
    expect(await next(`${HEAD}A,350,survived\nA,375,survived\n`, R)).toMatchObject({
      height: 400,
      specimen: 'same',
    });
    const after = await next(`${HEAD}A,350,survived\nA,375,failed\n`, R);
    expect(after).toMatchObject({ height: 350, specimen: 'new' });
    // Nine tyres more, from 350 to 1200 mm by 25 mm: 35 levels each.
    expect(after.remaining).toBe(9 * 35);
  });

  it('says what can still be used after a crash, and which tyre of a rise is censored', async () => {
    const up = await next(`${HEAD}A,500,survived\nB,525,failed\nC,50`);
    expect(up).toMatchObject({ status: 0, height: 500, recovery: { usable: 2, censored: [] } });
    expect(up.recovery.lost[0]).toContain('cut short');
    const rise = await next(`${HEAD}A,350,survived\nA,375,survived\nA,40`, R);
    expect(rise.recovery).toMatchObject({ usable: 2, censored: ['A'] });
    const gap = await next(`drop,${HEAD}1,A,350,survived\n2,A,375,survived\n5,B,350,survived\n`, R);
    expect(gap.recovery.censored).toEqual(['A']);
    expect(gap.recovery.lost[0]).toContain('2 running numbers missing');
  });

  it('gives no advice where too much is left out, and says from where to repeat', async () => {
    const rows = Array.from(
      { length: 12 },
      (_, i) => `T${i},500,survived,${i > 2 && i < 9 ? 'no,DROP-16' : 'yes,'}\n`,
    );
    const { status, decision, height, why } = await next(
      `specimen,height [mm],outcome,valid,reason\n${rows.join('')}`,
    );
    expect({ status, decision, height }).toEqual({ status: 3, decision: null, height: null });
    expect(why).toMatch(/Repeat the series from line 5 of/u);
  });

  it('refuses a log that cannot be read, and a drum protocol', async () => {
    expect(await next(`${HEAD}A,five hundred,survived\n`)).toMatchObject({
      status: 2,
      schema: 'tirelab.problems/1',
    });
    expect((await tirelab(['next', '--protocol', 'protocols/drum-two-block.yaml', log(HEAD)])).status).toBe(
      2,
    );
  });

  it('stays within 80 columns', async () => {
    for (const [protocol, text] of [
      [P, HEAD],
      [P, `${HEAD}A,500,survived\nB,525,failed\nC,50`],
      [R, `${HEAD}A,350,survived\nA,375,survived\nA,40`],
    ] as const) {
      const { out } = await tirelab(['next', '--protocol', protocol, log(text)]);
      expect(out).toMatch(/^Next drop: /u);
      expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    }
  });
});

describe('tirelab next --follow', () => {
  const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

  it('advises again when a row is written, and ends with the stop', async () => {
    const protocol = join(folder, 'three.yaml');
    writeFileSync(
      protocol,
      'format: tirelab.protocol/1\nid: p\nversion: 1.0.0\nkind: impact\nmethod: up-and-down\nmass: 8 kg\nstart: 500 mm\nstep: 25 mm\nstop: { drops: 2 }\n',
    );
    const path = log(HEAD);
    const running = tirelab(['next', '--protocol', protocol, '--follow', '--json', path]);
    await pause(300);
    appendFileSync(path, 'A,500,failed\n');
    await pause(500);
    appendFileSync(path, 'B,475,survived\n');
    const { status, out } = await running;
    expect(status).toBe(0);
    const lines = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines.map(({ decision, height }) => [decision, height])).toEqual([
      ['height', 500],
      ['height', 475],
      ['stop', null],
    ]);
  });

  it('ends with an error where the log becomes smaller', async () => {
    const path = log(`${HEAD}A,500,failed\nB,475,failed\n`);
    const running = tirelab(['next', '--protocol', P, '--follow', path]);
    await pause(300);
    truncateSync(path, HEAD.length);
    const { status, out, err } = await running;
    expect(status).toBe(2);
    expect(out).toContain('Next drop: 450 mm');
    expect(err).toMatch(/has become smaller while it was followed/u);
  });

  it('needs a file', async () => {
    const { status, err } = await tirelab(['next', '--protocol', P, '--follow', '-'], { input: HEAD });
    expect([status, err]).toEqual([2, expect.stringContaining('--follow needs a file')]);
  });
});
