import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VISIBILITY } from '../../src/conformance/visibility.ts';
import { documentsOf } from '../../src/jobs/documents-of.ts';
import { readImpactTest } from '../../src/jobs/impact-test.ts';
import { replayTest } from '../../src/jobs/replay-test.ts';

const FOLDER = 'fixtures/deviations';
const expected = JSON.parse(readFileSync(`${FOLDER}/expected.json`, 'utf8')) as Record<
  string,
  { readonly how: string; readonly file: string; readonly line: number | null }
>;

describe('fixtures/deviations', () => {
  it('has a folder for each departure that data can show', () => {
    const folders = readdirSync(FOLDER).filter((name) => name.startsWith('DROP-'));
    const visible = VISIBILITY.filter(({ seen }) => !seen.includes('none')).map(({ code }) => code);
    expect(folders.sort()).toEqual(visible);
    expect(Object.keys(expected)).toEqual(visible);
  });

  it.each(Object.entries(expected))('%s is told at its line, alone', async (code, { file, line }) => {
    const request = { kind: 'run', path: `${FOLDER}/${code}/run.yaml` } as const;
    const { replayed } = replayTest(await readImpactTest(documentsOf(request, noInput())));
    const told = replayed.deviations.map((it) => ({ code: it.code, line: it.line, file: it.file }));
    expect(told).toContainEqual({ code, line, file: `${FOLDER}/${code}/${file}` });
    expect(new Set(told.map((it) => it.code)).size).toBe(1);
  });
});

async function* noInput(): AsyncGenerator<Uint8Array> {}
