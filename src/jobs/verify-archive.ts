import { dirname } from 'node:path';
import { loadManifest } from '../documents/archive-manifest.ts';
import { fileHashes } from '../documents/file-hashes.ts';
import type { ArchiveVerification } from '../result/archive.ts';
import { archivedAt } from './archive.ts';

/**
 * Holds an archive against its manifest: every file is there and has its hash. What may go by the day is said; whether
 * it goes is for a person to decide.
 *
 * @param asOf the day, such as 2036-04-01; on the last day itself all must still be there.
 * @throws InputError where the manifest cannot be read, or is not as it was written.
 */
export function verifyArchive(path: string, asOf: string): ArchiveVerification {
  const { until, files, parts } = loadManifest(path);
  const hashes = fileHashes();
  const found = files.map((file) => ({ file, now: hashes.of(archivedAt(dirname(path), file.path)) }));
  const named = (all: typeof found) => all.map(({ file: { role, path: at } }) => ({ role, path: at }));
  const missing = named(found.filter(({ now }) => now === null));
  const changed = named(found.filter(({ file, now }) => now !== null && now.sha256 !== file.sha256));
  return {
    manifest: path,
    whole: missing.length === 0 && changed.length === 0,
    files: files.length,
    missing,
    changed,
    asOf,
    until,
    ended: until < asOf,
    parts: parts.map((part) => ({ ...part, ended: part.until < asOf })),
  };
}
