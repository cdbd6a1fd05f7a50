import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { readAmendments } from '../../src/logs/amendments.ts';
import { readChecks } from '../../src/logs/checks.ts';
import { readMountings } from '../../src/logs/mountings.ts';
import { spanOf } from '../../src/logs/span.ts';
import { readSpecimens } from '../../src/logs/specimens.ts';
import type { InputError } from '../../src/problem/problem.ts';

const from = (text: string) => Readable.from([Buffer.from(text)]);
const problemsOf = async (reading: Promise<unknown>) => {
  const error = await reading.then(
    () => null,
    (thrown: unknown) => thrown as InputError,
  );
  return error?.problems.map(({ line, column, code }) => [code, line, column]) ?? [];
};

describe('the table of mountings', () => {
  it('reads quantities in any unit, words and empty cells', async () => {
    const { records, findings } = await readMountings(
      from('specimen,from drop,rim width [cm],sealant [l],zero set,colour\nT1,4,2.5,0.03,yes,red\nT2,,,,,\n'),
    );
    expect(records[0]).toMatchObject({
      specimen: 'T1',
      fromDrop: 4,
      rimWidth: 25,
      sealant: 30,
      zeroSet: true,
    });
    expect(records[1]).toMatchObject({ fromDrop: null, rimWidth: null, zeroSet: null, rim: null });
    expect(findings).toEqual([expect.objectContaining({ code: 'unknown-column', column: 56 })]);
  });

  it('tells all that is wrong with it at once', async () => {
    const text = 'specimen,from drop,sealant [ml],zero set\n,x,-5,maybe\n';
    expect(await problemsOf(readMountings(from(text)))).toEqual([
      ['empty-cell', 2, 1],
      ['bad-count', 2, 2],
      ['out-of-range', 2, 4],
      ['unknown-word', 2, 7],
    ]);
    expect(await problemsOf(readMountings(from('specimen,sealant\nT1,5\n')))).toEqual([
      ['missing-unit', 1, 10],
    ]);
  });
});

describe('the table of rig checks', () => {
  it('holds a value against its limits, whatever the result says', async () => {
    const { records } = await readChecks(
      from(
        'time,check,result,value,lower,upper\n' +
          '2026-03-09T07:30+01:00,reference,passed,41,40,42\n' +
          '2026-03-09T07:30+01:00,reference,passed,43,40,42\n' +
          '2026-03-09T07:30+01:00,daily,failed,,,\n',
      ),
    );
    expect(records.map(({ passed }) => passed)).toEqual([true, false, false]);
  });

  it('refuses times without an offset and checks of no known kind', async () => {
    expect(await problemsOf(readChecks(from('time,check\n2026-03-09 07:30,weekly\n')))).toEqual([
      ['not-a-time', 2, 1],
      ['unknown-word', 2, 18],
    ]);
  });
});

describe('the journal of amendments', () => {
  const HEAD = 'line,drop,what,old,new,reason,by,on\n';

  it('refuses entries that name no row, or two, or nobody', async () => {
    const text = `${HEAD},,outcome,failed,survived,DROP-43,T2,2026-03-10\n3,4,outcome,failed,survived,DROP-43,T2,2026-03-10\n3,,outcome,failed,survived,,,soon\n`;
    const codes = (await problemsOf(readAmendments(from(text)))).map(([code, line]) => `${code}@${line}`);
    expect(codes).toEqual(['which-drop@2', 'which-drop@3', 'empty-cell@4', 'empty-cell@4', 'not-a-time@4']);
  });

  it('takes a column with its unit for the same column', async () => {
    const { records } = await readAmendments(from(`${HEAD}3,,Height [mm],500,510,DROP-01,T2,2026-03-10\n`));
    expect(records[0]!.what).toBe('height');
  });
});

describe('the role of a specimen', () => {
  it('is one of three words: another must not slip into the estimate', async () => {
    expect(await problemsOf(readSpecimens(from('specimen,role\nT1,control\n')))).toEqual([
      ['unknown-role', 2, 4],
    ]);
  });
});

describe('a moment as it was written', () => {
  // By hand: 09:00 at +01:00 is 08:00 UTC; a day there begins at 23:00 UTC of the day before.
  it.each([
    ['2026-03-09T09:00+01:00', '2026-03-09T08:00Z', '2026-03-09T08:00Z'],
    ['2026-03-09T09:00', '2026-03-09T08:00Z', '2026-03-09T08:00Z'],
    ['2026-03-09', '2026-03-08T23:00Z', '2026-03-09T22:59:59.999Z'],
  ])('%s', (text, first, last) => {
    expect(spanOf(text, '+01:00')).toEqual({ from: Date.parse(first), to: Date.parse(last) });
  });

  it.each(['09/03/2026', '2026-W03', 'soon', '2026-02-30'])('%s is none', (text) => {
    expect(spanOf(text, 'Z')).toBeNull();
  });
});
