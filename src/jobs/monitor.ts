import type { LogSource } from '../logs/bytes.ts';
import { type ReferenceReading, readReferenceReadings } from '../logs/reference-readings.ts';
import { InputError } from '../problem/problem.ts';
import type { MonitoredStandard, MonitorResult } from '../result/monitor.ts';
import { type Monitoring, monitorStandard } from '../rig/monitoring/monitor-standard.ts';
import { grouped } from '../statistics/summary/grouped.ts';
import { datedResults } from './dated-results.ts';
import { touchedResults } from './touched-results.ts';

/**
 * The check standards of a table over time, each by itself, rig by rig; and which stored results an open drift touches.
 *
 * @param column read as the value; null leaves it to the header
 * @param results files or folders of stored results
 * @throws InputError with the problems of the table, of each standard, or of the results
 */
export async function monitor(
  source: LogSource,
  column: string | null,
  how: Monitoring,
  results: readonly string[],
): Promise<MonitorResult> {
  const { path, sha256, bytes, records, findings } = await readReferenceReadings(source, column);
  if (records.length === 0) {
    const message =
      'found no reading, expected rows with a time and a value of a reference tyre or check mass; note them, or name their column with --column';
    throw new InputError([{ file: path, line: null, column: null, code: 'no-readings', message }]);
  }
  const groups = grouped(records, ({ standard, rig }) => `${standard}\n${rig}`);
  const standards = monitorEach(
    groups.map(([, readings]) => readings),
    how,
  );
  return {
    inputs: [{ role: 'checks', path, sha256, bytes, rows: records.length }],
    standards,
    touched: touchedResults(datedResults(results), standards),
    notes: findings.map(({ message, line, column: at }) =>
      [[path, line, at].filter((part) => part !== null).join(':'), message].join(': '),
    ),
    standing: standards.some(({ standing }) => standing === 'out-of-control')
      ? 'out-of-control'
      : 'in-control',
  };
}

/** All of them, or the problems of all that cannot be watched. */
function monitorEach(groups: readonly ReferenceReading[][], how: Monitoring): MonitoredStandard[] {
  const problems: InputError['problems'][number][] = [];
  const standards = groups.flatMap((readings) => {
    try {
      return [monitorStandard(readings, how)];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
      return [];
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  return standards;
}
