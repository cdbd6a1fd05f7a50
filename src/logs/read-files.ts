import { realpathSync } from 'node:fs';

/** What this process has read, by what the paths lead to. */
const read = new Set<string>();

/** Remembers that a file is an input: raw files are never written to, so no result may take its place. */
export function noteRead(path: string): void {
  const target = followed(path);
  if (target !== null) read.add(target);
}

/** Whether a path leads to a file that was read. */
export function wasRead(path: string): boolean {
  const target = followed(path);
  return target !== null && read.has(target);
}

function followed(path: string): string | null {
  try {
    return realpathSync(path);
  } catch {
    return null;
  }
}
