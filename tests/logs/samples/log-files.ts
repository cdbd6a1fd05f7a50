import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A folder for logs that a test writes; it goes when the tests of the file are done. */
export function logFolder(): { write(name: string, content: string | Uint8Array): string } {
  const folder = mkdtempSync(join(tmpdir(), 'drum-logs-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    write(name, content) {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
  };
}
