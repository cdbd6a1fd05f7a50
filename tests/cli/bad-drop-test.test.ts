import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

// Bad input of each method, through the command: an error with its place, or a refusal, either with what settles it.

let folder: string;
let count = 0;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(text: string, ending: string): string {
  count += 1;
  const path = join(folder, `file-${count}.${ending}`);
  writeFileSync(path, text);
  return path;
}

const protocol = (lines: string) =>
  file(
    `format: tirelab.protocol/1\nid: p\nversion: 1.0.0\nkind: impact\nmass: 8 kg\n${lines}\n`,
    'protocol.yaml',
  );
const log = (rows: readonly string[], head = 'specimen,height [mm],outcome') =>
  file(`${[head, ...rows].join('\n')}\n`, 'csv');

const STEPPED = 'method: up-and-down\nstart: 500 mm\nstep: 25 mm';
const RIG =
  'format: tirelab.rig/1\nid: drop-2\nconfig: "1"\nmass: 8 kg\nlimits: { min: 400 mm, max: 600 mm }\n';

describe('a protocol that no test can follow', () => {
  it.each([
    ['a step of nought', STEPPED.replace('25 mm', '0 mm'), ':8:7: ', 'expected a step above nought'],
    ['a ratio of nought', STEPPED.replace('25 mm', '0 %'), ':8:7: ', 'expected a step above nought'],
    [
      'a step beyond the range',
      `${STEPPED.replace('25 mm', '900 mm')}\nlimits: { min: 100 mm, max: 1200 mm }`,
      ':8:7: ',
      'expected a smaller step or wider limits',
    ],
    [
      'levels out of order',
      'method: fixed-level\nlevels: [450 mm, 400 mm]',
      ':7:18: ',
      'expected the levels in rising order; sort them',
    ],
    [
      'a level twice',
      'method: fixed-level\nlevels: [400 mm, 450 mm, 450 mm]',
      ':7:26: ',
      'expected each level once; remove one',
    ],
    [
      'a rule that cannot stop',
      `${STEPPED}\nsites: { each: same-spot }\nafterFailure: new-site\nstop: { specimens: 3 }`,
      ':11:9: ',
      'so that none is ever finished; use "drops"',
    ],
    [
      'a stop out of reach',
      `${STEPPED}\nstop: { drops: 20, rarer: 25, atMost: 40 }`,
      ':9:27: ',
      'the rarer outcome cannot be more often than that; correct one of them',
    ],
  ])('%s', async (_, lines, place, settles) => {
    const path = protocol(lines);
    const { status, out, err } = await tirelab(['analyze', '--protocol', path, log(['A,500,failed'])]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(`${path}${place}found `);
    expect(err.replace(/\s+/gu, ' ')).toContain(settles);
  });

  it('a step, start or level beyond the range of the rig', async () => {
    const rig = file(RIG, 'rig.yaml');
    for (const [lines, place, settles] of [
      [STEPPED.replace('25 mm', '150 mm'), ':8:7: ', 'expected a smaller step or another start'],
      [STEPPED.replace('500 mm', '700 mm'), ':7:8: ', 'expected a start that rig "drop-2" reaches'],
      ['method: fixed-level\nlevels: [300 mm, 500 mm]', ':7:9: ', 'expected levels that the rig reaches'],
    ] as const) {
      const path = protocol(lines);
      for (const command of ['analyze', 'next']) {
        const asked = [command, '--protocol', path, '--rig', rig, log(['A,500,failed'])];
        const { status, err } = await tirelab(asked);
        expect(status).toBe(2);
        expect(err).toContain(`${path}${place}found `);
        expect(err.replace(/\s+/gu, ' ')).toContain(settles);
      }
    }
  });

  it('a rule that has no end is simulated no more than planned', async () => {
    const asked = ['simulate', protocol(STEPPED), '--median', '40 J', '--spread', '3 J'];
    const { status, err } = await tirelab(asked);
    expect(status).toBe(2);
    expect(err.replace(/\s+/gu, ' ')).toContain('found no stop rule, expected one');
  });
});

describe('a history that the rule could not have made', () => {
  // Up after each failure, down after each survival: the outcome words exchanged.
  const rows = ['500,survived', ...Array.from({ length: 7 }, () => ['475,failed', '500,survived']).flat()];
  const exchanged = rows.map((row, i) => `T${i},${row}`);

  it('gets no estimate, and the reason says what settles it', async () => {
    const { status, out } = await tirelab([
      'analyze',
      '--json',
      '--protocol',
      protocol(STEPPED),
      log(exchanged),
    ]);
    const { conformance, estimates } = JSON.parse(out);
    expect(status).toBe(3);
    expect(conformance.status).toBe('invalid');
    expect(estimates).toHaveLength(1);
    expect(estimates[0]).toMatchObject({ value: null, interval: null });
    expect(estimates[0].why).toBe('DROP-04 invalidates the whole run: no estimate can be trusted.');
    const whole = conformance.deviations.find(({ scope }: { scope: string }) => scope === 'run');
    expect(whole).toMatchObject({ code: 'DROP-04', severity: 'invalidating' });
    expect(whole.message).toContain('14 of 14 moves of the series are none that up-and-down asks for');
    expect(whole.message).toContain('check which words of the log mean failed and survived');
  });

  it('gets no advice', async () => {
    const { status, out } = await tirelab([
      'next',
      '--json',
      '--protocol',
      protocol(STEPPED),
      log(exchanged),
    ]);
    expect(status).toBe(3);
    expect(JSON.parse(out)).toMatchObject({ decision: null, height: null });
    expect(JSON.parse(out).why).toContain('What settles it');
  });

  it('costs the count formula, not the likelihood, where it is one slip', async () => {
    const slip = ['500,failed', '475,survived', '500,failed', '500,survived', '525,failed', '500,survived'];
    const { status, out } = await tirelab([
      'analyze',
      '--json',
      '--protocol',
      protocol(STEPPED),
      log(slip.map((row, i) => `T${i},${row}`)),
    ]);
    const { estimates } = JSON.parse(out);
    expect(status).toBe(0);
    const counted = estimates.find(({ method }: { method: string }) => method === 'up-and-down-count');
    expect(counted.value).toBeNull();
    expect(counted.why).toBe(
      'the count formula does not apply: the height of line 5 was not the planned one (DROP-04; amend it if it was written wrongly)',
    );
    expect(estimates[0].interval).not.toBeNull();
  });
});

describe('a covariate that tells nothing', () => {
  const head = 'specimen,height [mm],pressure [bar],temperature [°C],series,outcome';
  const outcomes = ['survived', 'failed', 'survived', 'failed', 'failed', 'survived', 'survived', 'failed'];
  const rows = (pressure: (i: number) => number, temperature: (i: number) => number) =>
    Array.from(
      { length: 24 },
      (_, i) =>
        `T${i},${[450, 475, 500][i % 3]},${pressure(i)},${temperature(i)},${i % 2 === 0 ? 'a' : 'b'},${outcomes[(i * 3 + (i % 3)) % 8]}`,
    );
  const why = async (covariates: string, made: readonly string[]) => {
    const path = protocol(
      `method: fixed-level\nlevels: [450 mm, 475 mm, 500 mm]\nregression: { covariates: [${covariates}] }`,
    );
    const { out } = await tirelab(['analyze', '--json', '--protocol', path, log(made, head)]);
    return JSON.parse(out).regression.why;
  };

  it('is refused where it is constant', async () => {
    expect(
      await why(
        'pressure',
        rows(
          () => 2,
          () => 23,
        ),
      ),
    ).toBe(
      'pressure has the same value throughout, so its effect cannot be told; leave it out or test at another value',
    );
  });

  it('is refused where it goes together with another', async () => {
    expect(
      await why(
        'series, pressure',
        rows(
          (i) => (i % 2 === 0 ? 1.9 : 2.1),
          () => 23,
        ),
      ),
    ).toMatch(/^pressure goes together with .*series.*leave one out or test them apart$/u);
  });

  it('is refused where it goes together with the construction', async () => {
    const specimens = file(
      `specimen,construction\n${Array.from({ length: 24 }, (_, i) => `T${i},C-${i % 2}`).join('\n')}\n`,
      'csv',
    );
    const [made, path] = [
      log(
        rows(
          (i) => (i % 2 === 0 ? 1.9 : 2.1),
          () => 23,
        ),
        head,
      ),
      protocol(
        'method: fixed-level\nlevels: [450 mm, 475 mm, 500 mm]\nregression: { covariates: [construction, pressure] }',
      ),
    ];
    const run = file(
      `format: tirelab.run/1\nid: r\nprotocol: ${path}\nspecimens: ${specimens}\nlogs: [${made}]\n`,
      'yaml',
    );
    const { out, err } = await tirelab(['analyze', '--json', run]);
    expect(err).not.toContain('found');
    expect(JSON.parse(out).regression.why).toMatch(
      /^pressure goes together with construction C-1.*leave one out or test them apart$/u,
    );
  });
});
