import type { ArchiveManifest } from '../../result/archive.ts';
import { jsonText } from '../json-text.ts';

/** The manifest of an archive, `tirelab.archive/1`. */
export function archiveDocument({ until, results, files, parts }: ArchiveManifest, version: string): string {
  return jsonText({
    schema: 'tirelab.archive/1',
    tool: { name: 'tirelab', version },
    retention: { until },
    results,
    files,
    parts,
  });
}
