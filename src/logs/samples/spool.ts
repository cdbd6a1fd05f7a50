import { createWriteStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { LogSource } from '../bytes.ts';

/** A log that lies in a file, and can be read at any place. */
export interface KeptLog {
  readonly path: string;
  /** What messages and results call it. */
  readonly named: string;
  /** 0 where it is not there: whoever reads it says so. */
  readonly bytes: number;
  /** Takes away what was written for it. */
  remove(): void;
}

/**
 * The file of a log. Standard input is written to a temporary one first, since parts of a drum log are read side by side
 * and some again.
 */
export async function keepAsFile(source: LogSource): Promise<KeptLog> {
  if (typeof source === 'string') return fileOf(source, source, () => {});
  if ('named' in source) return fileOf(source.path, source.named, () => {});
  const folder = mkdtempSync(join(tmpdir(), 'tirelab-'));
  const path = join(folder, 'standard-input.csv');
  const remove = () => rmSync(folder, { recursive: true, force: true });
  try {
    await pipeline(Readable.from(source), createWriteStream(path));
  } catch (error) {
    remove();
    throw error;
  }
  return fileOf(path, '-', remove);
}

function fileOf(path: string, named: string, remove: () => void): KeptLog {
  const bytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  return { path, named, bytes, remove };
}
