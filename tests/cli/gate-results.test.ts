import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
  lab.keep('C-114');
  lab.add('demo');
});
afterEach(() => lab.remove());

function change(path: string, edit: (text: string) => string): void {
  writeFileSync(path, edit(readFileSync(path, 'utf8')));
}

describe('a stored result', () => {
  it('stands for its run while it is current, with the same verdicts and numbers', async () => {
    const fromLogs = await lab.gate();
    const path = await lab.store('demo');
    const { status, result, criterion } = await lab.gate();
    expect(status).toBe(0);
    expect(result.results).toEqual([{ path, run: 'demo', state: 'current', why: null, notCompared: 0 }]);
    const median = criterion('C-114', 'median');
    expect(median.evidence[0]).toMatchObject({ run: 'demo', result: path });
    expect(median.evidence[0].judged).toEqual(fromLogs.criterion('C-114', 'median').evidence[0].judged);
    // The logs may be gone into an archive: they are not read.
    lab.remove('fixtures/demo/drops.csv');
    const apart = await lab.gate();
    expect(apart.status).toBe(0);
    expect(apart.result.results[0]).toMatchObject({ state: 'current', notCompared: 1 });
  });

  it.each([
    ['a log', 'fixtures/demo/drops.csv', 'T1\n', 'T2\n', /^log .*drops\.csv has changed$/],
    [
      'the protocol',
      'protocols/pinch-up-down.yaml',
      'step: 25 mm',
      'step: 25.0 mm',
      /^protocol .* has changed$/,
    ],
    [
      'the specification',
      'shared/specifications/trail-casing.yaml',
      'atLeast: 45 J',
      'atLeast: 46 J',
      /^specification .* has changed$/,
    ],
    [
      'the construction',
      'shared/constructions/C-114.yaml',
      'plies: 2',
      'plies: 3',
      /^construction .* has changed$/,
    ],
    ['the run', 'fixtures/demo/run.yaml', 'issued: 2026-03-12', 'issued: 2026-03-13', /^run .* has changed$/],
  ])('is stale once %s has changed, and the run is analysed anew', async (_name, file, from, to, why) => {
    await lab.store('demo');
    lab.edit(file, (text) => text.replace(from, to));
    const { status, result, criterion } = await lab.gate();
    expect(status).toBe(0);
    expect(result.results[0].state).toBe('stale');
    expect(result.results[0].why).toMatch(why);
    expect(criterion('C-114', 'median').evidence[0].result).toBeNull();
  });

  it('is stale when another version of the program made it', async () => {
    const path = await lab.store('demo');
    change(path, (text) => text.replace(/("name": "tirelab", "version": )"[^"]+"/, '$1"0.0.9"'));
    const { result } = await lab.gate();
    expect(result.results[0].why).toMatch(/^made by tirelab 0\.0\.9, and this is /);
  });

  it('that is stale and without its run is no valid evidence', async () => {
    const path = await lab.store('demo');
    lab.write('results/demo.json', readFileSync(path, 'utf8'));
    lab.remove('fixtures/demo');
    lab.edit('shared/specifications/trail-casing.yaml', (text) => text.replace('45 J', '30 J'));
    const { status, criterion } = await lab.gate();
    expect(status).toBe(3);
    expect(criterion('C-114', 'median')).toMatchObject({ verdict: 'invalid' });
    expect(criterion('C-114', 'median').why).toMatch(
      /stale .*specification.* has changed.*its run is not here/,
    );
  });

  it('whose verdict its own numbers contradict is no valid evidence', async () => {
    lab.keep();
    lab.remove();
    lab = new GateLab();
    lab.keep('C-115');
    lab.add('demo-fail');
    const path = await lab.store('demo-fail');
    change(path, (text) => text.replaceAll('"verdict": "fail"', '"verdict": "pass"'));
    const { status, criterion } = await lab.gate();
    expect(status).toBe(3);
    expect(criterion('C-115', 'median')).toMatchObject({ verdict: 'invalid' });
    expect(criterion('C-115', 'median').why).toContain('the numbers beside it say fail');
  });

  it('that is no JSON of a result is told and stops nothing', async () => {
    lab.write('results/odd.json', '{ "schema": "tirelab.result/1", ');
    const { status, result } = await lab.gate();
    expect(status).toBe(3);
    expect(result.verdict).toBe('pass');
    expect(result.unreadable).toHaveLength(1);
  });

  it('is found again when the repository was moved', async () => {
    const path = await lab.store('demo');
    const moved = new GateLab();
    try {
      moved.keep('C-114');
      moved.add('demo');
      moved.write('fixtures/demo/result.json', readFileSync(path, 'utf8'));
      lab.remove();
      const { status, result } = await moved.gate();
      expect(status).toBe(0);
      expect(result.results[0]).toMatchObject({ state: 'current', notCompared: 0 });
    } finally {
      moved.remove();
    }
  });
});

describe('a stored result whose run was moved and changed', () => {
  it('is stale and stands for nothing: the run is judged once, by what it is now', async () => {
    await lab.store('demo');
    const text = readFileSync(join(lab.folder, 'fixtures/demo/result.json'), 'utf8');
    const run = readFileSync(join(lab.folder, 'fixtures/demo/run.yaml'), 'utf8');
    lab.write('results/demo.json', text);
    lab.write('fixtures/demo/moved.yaml', `${run}# moved\n`);
    lab.remove('fixtures/demo/run.yaml');
    lab.remove('fixtures/demo/result.json');
    const { status, result, criterion } = await lab.gate();
    expect(status).toBe(0);
    expect(result.results).toMatchObject([{ state: 'stale', why: 'run demo has changed' }]);
    expect(criterion('C-114', 'median').evidence).toMatchObject([{ run: 'demo', result: null }]);
  });
});

describe('a run that names no construction', () => {
  it('is of the one that its table of specimens names', async () => {
    lab.edit('fixtures/demo/run.yaml', (text) => text.replace(/^constructions:.*\n/mu, ''));
    const { status, criterion } = await lab.gate();
    expect(status).toBe(0);
    expect(criterion('C-114', 'median').evidence).toHaveLength(1);
  });
});

describe('gate --what-if', () => {
  it('judges by the other limit, says what turns, and writes nothing', async () => {
    const path = await lab.store('demo');
    const before = readFileSync(path, 'utf8');
    // The one-sided 95 % lower bound of the demo's median is 49.05 J (README): 48 J still passes, 50 J does not.
    const held = await lab.gate('--what-if', 'median>=48 J');
    expect(held.status).toBe(0);
    expect(held.criterion('C-114', 'median')).toMatchObject({ before: 'pass', verdict: 'pass' });
    const turned = await lab.gate('--what-if', 'median >= 0.05 kJ');
    expect(turned.status).toBe(3);
    expect(turned.result.whatIf).toEqual(['median >= 0.05 kJ']);
    expect(turned.criterion('C-114', 'median')).toMatchObject({ before: 'pass', verdict: 'inconclusive' });
    expect(turned.criterion('C-114', 'tail').before).toBeUndefined();
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(readFileSync(join(lab.folder, 'shared/specifications/trail-casing.yaml'), 'utf8')).toContain(
      '45 J',
    );
  });

  it('gives the same from logs as from stored results, and moves one end of a range', async () => {
    const args = ['--what-if', 'mass>=900 g', '--what-if', 'tail>=40 J'];
    const fromLogs = await lab.gate(...args);
    await lab.store('demo');
    const stored = await lab.gate(...args);
    for (const id of ['mass', 'tail']) {
      expect(stored.criterion('C-114', id).verdict).toBe(fromLogs.criterion('C-114', id).verdict);
    }
    // The lightest tyre of the demo weighs 891 g (README).
    expect(stored.criterion('C-114', 'mass')).toMatchObject({ before: 'pass', verdict: 'fail' });
  });

  it.each([
    ['median>48', /expected the id of a criterion, >= or <=/],
    ['medain>=48 J', /"medain", expected one of median, tail/],
    ['median>=48 mm', /which is a length; expected a energy|expected an? energy/],
    ['median<=48 J', /limit on the other side/],
  ])('refuses %s', async (question, message) => {
    const { status, err } = await tirelab(['gate', lab.folder, '--what-if', question]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });
});

describe('results of a batch', () => {
  it('stand for their runs line by line; a run that the batch could not read is left to the gate', async () => {
    lab.remove();
    lab = new GateLab();
    lab.add('demo', 'demo-fail', 'demo-undecided');
    const runs = ['demo', 'demo-fail', 'demo-undecided'].map((run) =>
      join(lab.folder, `fixtures/${run}/run.yaml`),
    );
    const file = join(lab.folder, 'results.ndjson');
    await tirelab(['analyze', join(lab.folder, 'none.yaml'), ...runs, '--ndjson', '-o', file]);
    const { status, result, criterion } = await lab.gate();
    expect(status).toBe(1);
    const states = result.results.map(({ path, state }: { path: string; state: string }) => [path, state]);
    expect(states).toEqual([2, 3, 4].map((line) => [`${file}:${line}`, 'current']));
    expect(criterion('C-115', 'median')).toMatchObject({
      verdict: 'fail',
      evidence: [{ result: `${file}:3` }],
    });
  });
});
