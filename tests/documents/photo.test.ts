import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readPhoto } from '../../src/documents/photo.ts';

const folder = mkdtempSync(join(tmpdir(), 'tirelab-photo-'));
afterAll(() => rmSync(folder, { recursive: true }));

// Signatures: PNG specification (W3C, third edition, 5.2); JPEG: SOI and the next marker (ITU-T T.81, B.1.1.3).
const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0];
const JPEG = [0xff, 0xd8, 0xff, 0xe0, 0, 16];

function file(name: string, bytes: readonly number[] | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, Uint8Array.from(bytes));
  return path;
}

const problemOf = (path: string) => {
  try {
    readPhoto({ path, named: 'photos/x' }, 'caption');
  } catch (error) {
    return (error as { problems: { file: string; code: string; message: string }[] }).problems[0]!;
  }
  throw new Error('it was read');
};

describe('a photograph', () => {
  it('is what its first bytes say, whatever its name', () => {
    expect(readPhoto({ path: file('a.jpg', PNG) }, 'cut')).toMatchObject({ type: 'image/png', bytes: 10 });
    expect(readPhoto({ path: file('b.png', JPEG) }, 'cut')).toMatchObject({
      type: 'image/jpeg',
      caption: 'cut',
    });
  });

  it('is nothing else: not a picture that could hold a script, nor a text', () => {
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
    for (const bytes of [
      svg,
      Buffer.from('GIF89a'),
      Buffer.from('RIFF0000WEBP'),
      Buffer.alloc(0),
      PNG.slice(0, 7),
    ]) {
      expect(problemOf(file('c.png', bytes))).toMatchObject({ file: 'photos/x', code: 'not-a-picture' });
    }
  });

  it('is refused with what settles it when it is too large, missing, or a folder', () => {
    const large = Buffer.concat([Buffer.from(PNG), Buffer.alloc(2 * 1024 * 1024)]);
    expect(problemOf(file('d.png', large))).toMatchObject({ code: 'too-large' });
    expect(problemOf(file('d.png', large)).message).toMatch(/make it smaller/);
    expect(problemOf(join(folder, 'none.png'))).toMatchObject({ code: 'missing-file' });
    expect(problemOf(folder)).toMatchObject({ code: 'not-a-file' });
    symlinkSync('loop.png', join(folder, 'loop.png'));
    expect(problemOf(join(folder, 'loop.png'))).toMatchObject({ code: 'unreadable-file' });
  });
});
