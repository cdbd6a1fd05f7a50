import { appendFileSync, closeSync, openSync, truncateSync, writeSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { passDrumLogs } from '../../../src/endurance/drum-pass.ts';
import { inlineRunner, type PartRunner } from '../../../src/endurance/part-runner.ts';
import { summarise } from '../../../src/endurance/summary.ts';
import { InputError } from '../../../src/problem/problem.ts';
import { block } from '../../endurance/drum-log.ts';
import { logFolder } from './log-files.ts';

const folder = logFolder();
const SCHEDULE = [block('main', { distance: 100, speed: '36 km/h ± 2 %', load: '650 N ± 2 %' })];
const row = (i: number) => `${new Date(Date.UTC(2026, 2, 2) + i * 1000).toISOString()},36,650,${i / 100}\n`;
const log = (count: number) =>
  `time,speed [km/h],load [N],distance [km]\n${Array.from({ length: count }, (_, i) => row(i)).join('')}`;

const pass = (path: string, runner: PartRunner = inlineRunner()) =>
  passDrumLogs([path], { schedule: SCHEDULE, sampling: 1, partBytes: 10_000, runner });

/** Does something to the file when its third part is to be read. */
function atThirdPart(act: () => void): PartRunner {
  const inline = inlineRunner();
  let parts = 0;
  return {
    ...inline,
    fold: (task) => {
      parts += 1;
      if (parts === 3) act();
      return inline.fold(task);
    },
  };
}

describe('a drum log', () => {
  it('with a line of 200 MB is refused at it, in bounded memory', async () => {
    const path = folder.write('long-line.csv', log(5));
    const file = openSync(path, 'a');
    const chunk = Buffer.alloc(1 << 20, 'x');
    for (let i = 0; i < 200; i++) writeSync(file, chunk);
    writeSync(file, `\n${row(6)}`);
    closeSync(file);
    const before = process.memoryUsage().rss;
    const error = await passDrumLogs([path], { schedule: SCHEDULE, sampling: 1 }).catch((caught) => caught);
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).problems).toMatchObject([{ line: 7, code: 'row-too-long' }]);
    expect(process.memoryUsage().rss - before).toBeLessThan(60e6);
  });

  it('that grows while it is read gives what it had at its opening, and says so', async () => {
    const path = folder.write('growing.csv', log(2000));
    const grown = await pass(
      path,
      atThirdPart(() => appendFileSync(path, row(2000) + row(2001))),
    );
    expect(summarise(grown).distance.logged).toBeCloseTo(19.99, 9);
    expect(grown.logs[0]!.findings).toMatchObject([{ code: 'grew' }]);
    expect(summarise(await pass(path)).distance.logged).toBeCloseTo(20.01, 9);
  });

  it('that is half of a line at its opening leaves the half out', async () => {
    const path = folder.write('half.csv', log(100).slice(0, -12));
    const { logs } = await pass(path);
    expect(logs[0]).toMatchObject({
      rows: 99,
      tallies: [{ code: 'truncated-line', count: 1, firstLine: 101 }],
    });
  });

  it('that shrinks while it is read is refused', async () => {
    const path = folder.write('shrinking.csv', log(2000));
    const half = log(1000).length;
    await expect(
      pass(
        path,
        atThirdPart(() => truncateSync(path, half)),
      ),
    ).rejects.toThrow('ended at byte');
  });

  it('with a thousand wrong cells tells the first twenty, and counts the rest', async () => {
    const text = log(3000).replaceAll(',650,', (_, at: number) => (at % 3 === 0 ? ',65O,' : ',650,'));
    const wrong = text.split(',65O,').length - 1;
    const path = folder.write('wrong.csv', text);
    const { problems } = (await pass(path).catch((caught) => caught)) as InputError;
    expect(problems.filter(({ line }) => line !== null)).toHaveLength(20);
    expect(problems.at(-1)!.message).toBe(`and ${wrong - 20} more of this kind (not-a-number)`);
  });
});
