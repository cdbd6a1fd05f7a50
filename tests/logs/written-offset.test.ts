import { describe, expect, it } from 'vitest';
import { writtenOffset } from '../../src/logs/written-offset.ts';

const log = async function* (text: string, encoding: BufferEncoding = 'utf8') {
  yield Buffer.from(text, encoding);
};

describe('writtenOffset', () => {
  it('reads the offset behind the first time', async () => {
    expect(await writtenOffset(log('time,speed\n2026-03-02T06:00:00.0+01:00,25\n'))).toBe('+01:00');
    expect(await writtenOffset(log('time;speed\n2026-03-02 06:00:00,5-0330;25\n', 'utf16le'))).toBe('-0330');
  });

  it('has none for UTC, which tells no place, and for a log that counts from its start', async () => {
    expect(await writtenOffset(log('time,speed\n2026-03-02T05:00:00Z,25\n'))).toBeNull();
    expect(await writtenOffset(log('elapsed [s],speed\n0,25\n'))).toBeNull();
  });
});
