import type { MonitorResult } from '../../result/monitor.ts';
import { jsonText } from '../json-text.ts';
import type { TextOptions } from '../text/page.ts';

/** The document of `monitor --json`. */
export function monitorDocument(result: MonitorResult, { version }: Pick<TextOptions, 'version'>): string {
  const { standing, standards, touched, inputs, notes } = result;
  return jsonText({
    schema: 'tirelab.monitor/1',
    tool: { name: 'tirelab', version },
    inputs,
    standing,
    standards,
    touched,
    notes,
  });
}
