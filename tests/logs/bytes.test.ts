import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { ByteReader, type LogSource } from '../../src/logs/bytes.ts';
import type { InputError } from '../../src/problem/problem.ts';

async function failure(source: LogSource): Promise<InputError['problems']> {
  try {
    for await (const _ of new ByteReader(source));
  } catch (error) {
    return (error as InputError).problems;
  }
  return [];
}

/** As the system reports it where a file may not be read: tests may run as a user who may read everything. */
async function* refused(code: string): AsyncGenerator<Uint8Array> {
  yield new Uint8Array(1);
  throw Object.assign(new Error(code), { code, syscall: 'read' });
}

describe('ByteReader', () => {
  it('counts and hashes what it gives on', async () => {
    const reader = new ByteReader(Readable.from([Buffer.from('a'), Buffer.from('bc')]));
    const chunks: Uint8Array[] = [];
    for await (const chunk of reader) chunks.push(chunk);
    expect(Buffer.concat(chunks).toString()).toBe('abc');
    expect(reader.path).toBe('-');
    expect(reader.bytes).toBe(3);
    // FIPS 180-2, appendix B.1: the hash of "abc".
    expect(reader.sha256()).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('gathers the small writes of a pipe', async () => {
    const parts = Array.from({ length: 200_000 }, () => Buffer.from([0x61]));
    let chunks = 0;
    const reader = new ByteReader(Readable.from(parts));
    for await (const _ of reader) chunks += 1;
    expect(reader.bytes).toBe(200_000);
    expect(chunks).toBeLessThan(5);
  });

  it.each([
    ['nowhere/log.csv', 'no-such-file'],
    ['package.json/log.csv', 'no-such-file'],
    ['src', 'is-a-directory'],
    [Readable.from([]), 'empty-file'],
    [refused('EACCES'), 'unreadable-file'],
    [refused('EISDIR'), 'is-a-directory'],
    [refused('EIO'), 'unreadable-file'],
  ])('has one error: %s, %s', async (source, code) => {
    const file = typeof source === 'string' ? source : '-';
    expect(await failure(source)).toMatchObject([{ file, line: null, column: null, code }]);
  });

  it('says that a circle of links cannot be read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'links-'));
    symlinkSync(join(folder, 'b'), join(folder, 'a'));
    symlinkSync(join(folder, 'a'), join(folder, 'b'));
    const problems = await failure(join(folder, 'a'));
    rmSync(folder, { recursive: true });
    expect(problems).toMatchObject([{ code: 'unreadable-file' }]);
    expect(problems[0]!.message).toContain('ELOOP');
  });

  it('lets other errors through: they are faults, not input', async () => {
    const broken = async function* (): AsyncGenerator<Uint8Array> {
      yield new Uint8Array(1);
      throw new TypeError('a fault');
    };
    await expect(new ByteReader(broken())[Symbol.asyncIterator]().next()).rejects.toThrow(TypeError);
  });
});
