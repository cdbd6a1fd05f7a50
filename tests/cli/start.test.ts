import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';
import { describe, expect, it } from 'vitest';

/** As bin/tirelab.js loads the built program. */
const filename = fileURLToPath(new URL('../../dist/tirelab.js', import.meta.url));
const source = readFileSync(filename, 'latin1');

describe('the built program', () => {
  it('starts from the compiled code that the build kept, which this engine accepts', () => {
    const cachedData = readFileSync(`${filename}.code`);
    expect(new Script(source, { filename, cachedData }).cachedDataRejected).toBe(false);
  });

  it('is ASCII, since it is read as Latin-1', () => {
    expect(source).toMatch(/^[\0-\x7f]+$/);
  });
});
