import { readFileSync } from 'node:fs';
import { documentOf } from '../../../src/documents/load.ts';
import { rig } from '../../../src/documents/rig.ts';
import type { ExportProfile } from '../../../src/logs/export/profile.ts';

/** The profile of an `export` block, as a rig's document would have it. */
export function profileOf(block: string): ExportProfile {
  const text = `format: tirelab.rig/1\nid: r\nexport: ${block}\n`;
  return rig(documentOf(Buffer.from(text), 'rig.yaml', 'rig')).export!;
}

export function profileOfFile(path: string): ExportProfile {
  return rig(documentOf(readFileSync(path), path, 'rig')).export!;
}
