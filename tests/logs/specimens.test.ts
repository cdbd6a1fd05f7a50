import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { readSpecimens } from '../../src/logs/specimens.ts';
import type { InputError } from '../../src/problem/problem.ts';

const read = (text: string) => readSpecimens(Readable.from([Buffer.from(text)]));

describe('readSpecimens', () => {
  it('reads known columns and quantities, and keeps every other cell as written', async () => {
    const { specimens, findings } = await read(
      'specimen,construction,role,mass [kg],batch,conditioned from,width [in],hardness [ShA],Bead temperature [°C]\n' +
        'T-1,C-114@2,candidate,0.905,0412,2026-03-01T06:00Z,2.5,"62, back",24.5\n' +
        'T-2,,,,,,,,\n',
    );
    expect(findings).toEqual([]);
    expect(specimens).toEqual([
      {
        file: '-',
        line: 2,
        constructionColumn: 5,
        specimen: 'T-1',
        construction: 'C-114@2',
        role: 'candidate',
        mass: 905,
        other: {
          batch: '0412',
          'conditioned from': '2026-03-01T06:00Z',
          'width [in]': '2.5',
          'hardness [ShA]': '62, back',
          'Bead temperature [°C]': '24.5',
        },
        measured: { mass: 905, width: 63.5, 'bead temperature': 24.5 },
      },
      {
        file: '-',
        line: 3,
        constructionColumn: 5,
        specimen: 'T-2',
        construction: null,
        role: null,
        mass: null,
        other: {},
        measured: {},
      },
    ]);
  });

  it.each([
    ['specimen,mass\nT-1,905\n', 1, 10, 'missing-unit'],
    ['specimen,mass [mm]\nT-1,905\n', 1, 10, 'wrong-unit'],
    ['specimen,batch,Batch\nT-1,1,2\n', 1, 16, 'duplicate-column'],
    ['construction\nC-114\n', 1, null, 'missing-column'],
  ])('refuses %j', async (text, line, column, code) => {
    const error = (await read(text).catch((thrown: unknown) => thrown)) as InputError;
    expect(error.problems).toMatchObject([{ line, column, code }]);
  });
});
