import type { StatusResult } from '../../result/status.ts';
import { jsonText } from '../json-text.ts';

/** The document of `status --json`. @param version of tirelab itself */
export function statusDocument({ asOf, runs, unread }: StatusResult, version: string): string {
  return jsonText({ schema: 'tirelab.status/1', tool: { name: 'tirelab', version }, asOf, runs, unread });
}
