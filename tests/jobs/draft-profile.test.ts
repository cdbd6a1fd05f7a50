import { describe, expect, it } from 'vitest';
import { documentOf } from '../../src/documents/load.ts';
import { rig } from '../../src/documents/rig.ts';
import { type Draft, draftProfile, type Question } from '../../src/jobs/draft-profile.ts';
import { draftText } from '../../src/jobs/draft-profile-text.ts';
import { readDropLog } from '../../src/logs/drops.ts';
import { InputError } from '../../src/problem/problem.ts';
import { profileOfFile } from '../logs/export/profile-of.ts';

// What each export leaves open is read off its bytes by an engineer; the answers are those of the rigs' documents.
const WORDS = {
  'n.i.O.': 'failed',
  'i.O.': 'survived',
  Y: 'failed',
  N: 'survived',
  '×': 'failed',
  '○': 'survived',
  leak: 'failed',
  tight: 'survived',
  flat: 'failed',
  ok: 'survived',
};
const RIGS: Readonly<
  Record<string, { file: string; asked: string[]; answers: Readonly<Record<string, string>> }>
> = {
  'hammer-a': {
    file: 'export.csv',
    asked: ['encoding', 'outcomes', 'outcomes', 'time.format', 'time.zone'],
    answers: { encoding: 'windows-1252', 'time.format': 'DD.MM.YYYY hh:mm:ss', 'time.zone': 'Europe/Berlin' },
  },
  'tower-b': {
    file: 'export.csv',
    asked: ['outcomes', 'outcomes', 'time.format', 'time.zone'],
    answers: { 'time.format': 'M/D/YYYY h:mm:ss AP', 'time.zone': '+01:00' },
  },
  'press-c': {
    file: 'export.csv',
    asked: ['encoding', 'outcomes', 'outcomes', 'time.zone'],
    answers: { encoding: 'shift_jis', 'time.zone': 'Europe/Berlin' },
  },
  'bench-e': {
    file: 'export.xlsx',
    asked: ['sheet', 'outcomes', 'outcomes', 'time.zone'],
    answers: { sheet: 'Drops 2026', 'time.zone': 'Europe/Berlin' },
  },
};

const answered = (draft: Draft, answers: Readonly<Record<string, string>>) =>
  new Map<Question, string>(
    draft.questions.map((question) => {
      const { key, word } = question;
      return [question, word === undefined ? answers[key]! : WORDS[word as keyof typeof WORDS]];
    }),
  );
const rigOf = (text: string) => rig(documentOf(Buffer.from(text), 'draft.yaml', 'rig'));

describe('a drafted profile', () => {
  it('of columns of fixed width has the widths that were given, and reads the export once it is settled', async () => {
    const path = 'fixtures/hostile/exports/fixed-width.csv';
    const draft = await draftProfile(path, [6, 22, 9, 8, 12]);
    expect(draft.questions.map(({ key }) => key)).toEqual([
      'columns.specimen',
      'columns.height.unit',
      'outcomes',
      'outcomes',
      'time.format',
      'time.zone',
    ]);
    expect(draft.questions[4]!.choices).toContain('ddd, DD.MM.YYYY hh:mm');
    const said: Readonly<Record<string, string>> = {
      'columns.specimen': 'Pruefling',
      'columns.height.unit': 'mm',
      'time.format': 'ddd, DD.MM.YYYY hh:mm',
      'time.zone': 'Europe/Berlin',
      Durchschlag: 'failed',
      dicht: 'survived',
    };
    const answers = new Map(
      draft.questions.map((question) => [question, said[question.word ?? question.key]!]),
    );
    const text = draftText(draft, 'x', answers);
    expect(text).toContain('  widths: [6, 22, 9, 8, 12]\n');
    const { drops } = await readDropLog(path, rigOf(text).export);
    expect(drops.map(({ specimen, height, outcome }) => [specimen, height, outcome])).toEqual([
      ['T "1"', 500, 'failed'],
      ['T;2', 475.5, 'survived'],
      ['T-3', 500, 'survived'],
    ]);
  });

  it.each(Object.entries(RIGS))(
    '%s: asks what the export leaves open, and reads it once that is settled',
    async (name, { file, asked, answers }) => {
      const path = `fixtures/rigs/${name}/${file}`;
      const draft = await draftProfile(path);
      expect(draft.questions.map(({ key }) => key)).toEqual(asked);
      const profile = rigOf(draftText(draft, name, answered(draft, answers))).export!;
      const log = await readDropLog(path, profile);
      const wanted = await readDropLog(path, profileOfFile(`fixtures/rigs/${name}/rig.yaml`));
      // The draft takes a column of notes for remarks, where the rig's document says that they are damage.
      expect(log.drops.map((drop) => ({ ...drop, damage: null, remark: null }))).toEqual(
        wanted.drops.map((drop) => ({ ...drop, damage: null, remark: null })),
      );
    },
  );

  it.each(Object.entries(RIGS))(
    '%s: is refused while a key is open, and names it',
    async (name, { file }) => {
      const draft = await draftProfile(`fixtures/rigs/${name}/${file}`);
      const text = draftText(draft, name, new Map());
      const error = (() => {
        try {
          rigOf(text);
        } catch (thrown) {
          return thrown;
        }
      })();
      expect(error).toBeInstanceOf(InputError);
      const { problems } = error as InputError;
      expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['to-settle']));
      const keys = problems.map(({ message }) => message.split(' ')[0]);
      expect(keys).toContain('export.outcomes.failed');
      for (const { key } of draft.questions) if (key !== 'outcomes') expect(keys).toContain(`export.${key}`);
      // Each open key has its question right above it.
      const lines = text.split('\n');
      for (const { line } of problems)
        expect(lines.slice(Math.max(0, line! - 5), line!).join('\n')).toContain('TO SETTLE');
    },
  );

  it('leaves the decimal mark open where every number can be read two ways', async () => {
    const draft = await draftProfile('fixtures/hostile/exports/decimal-open.csv');
    expect(draft.questions.find(({ key }) => key === 'decimal')?.ask).toContain('1.250');
  });

  it('asks for a unit that stands nowhere', async () => {
    const draft = await draftProfile('fixtures/hostile/exports/unit-missing.csv');
    expect(draft.questions.map(({ key }) => key)).toEqual(['columns.height.unit', 'columns.pressure.unit']);
  });

  it('refuses what holds no table', async () => {
    await expect(draftProfile('fixtures/hostile/logs/empty.csv')).rejects.toThrow(InputError);
    await expect(draftProfile('fixtures/hostile/logs/all-nul.csv')).rejects.toThrow(InputError);
    await expect(draftProfile('fixtures/none.csv')).rejects.toThrow(/no such file/);
    await expect(draftProfile('fixtures')).rejects.toThrow(InputError);
  });
});
