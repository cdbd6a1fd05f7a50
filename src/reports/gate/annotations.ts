import { createHash } from 'node:crypto';
import { echo } from '../../problem/echo.ts';
import type { GateResult } from '../../result/gate.ts';
import { jsonText } from '../json-text.ts';
import { verdictWord } from '../text/names.ts';

/** Something that a reviewer of a change should see at a file. */
interface Remark {
  readonly path: string;
  readonly line: number;
  readonly title: string;
  readonly message: string;
  /** `error` stops a change; `warning` leaves it undecided. */
  readonly kind: 'error' | 'warning';
  /** What makes it the same remark when lines move. */
  readonly identity: string;
}

/** So many of a kind are shown by the systems that read workflow commands. */
const MOST = 10;

/** Workflow commands that annotate the files of a change: at most ten of a kind, the rest counted. */
export function gateAnnotations(result: GateResult): string {
  const remarks = remarksOf(result);
  const lines = (['error', 'warning'] as const).flatMap((kind) => {
    const own = remarks.filter((remark) => remark.kind === kind);
    const shown = own.slice(0, MOST).map(({ path, line, title, message }) => {
      const properties = `file=${property(path)},line=${line},title=${property(title)}`;
      return `::${kind} ${properties}::${data(message)}`;
    });
    return own.length > MOST ? [...shown, `… ${own.length - MOST} more of kind ${kind}`] : shown;
  });
  return lines.length === 0 ? 'Every criterion passes.\n' : `${lines.join('\n')}\n`;
}

/** A Code Quality report: fingerprints that stay when lines move, each once. */
export function gateCodeQuality(result: GateResult): string {
  const entries = remarksOf(result).map(({ path, line, title, message, kind, identity }) => ({
    description: `${title}: ${message}`,
    check_name: 'tirelab-gate',
    fingerprint: createHash('sha256').update(identity).digest('hex'),
    severity: kind === 'error' ? 'critical' : 'major',
    location: { path, lines: { begin: line } },
  }));
  return jsonText(entries);
}

function remarksOf({ judged, unreadable, remarks, results }: GateResult): Remark[] {
  const criteria = judged.flatMap(({ construction, specification, criteria: all }) =>
    all
      .filter(({ verdict }) => !['pass', 'waived', 'external'].includes(verdict))
      .map(({ id, verdict, why, notes }): Remark => {
        const name = `${construction.id}@${construction.revision}`;
        return {
          path: construction.path,
          line: 1,
          title: echo(`${name} ${specification.id} ${id}: ${verdictWord(verdict)}`, 200),
          message: echo([why, ...notes].join('; '), 500),
          kind: verdict === 'fail' ? 'error' : 'warning',
          identity: ['criterion', name, `${specification.id}@${specification.version}`, id, verdict].join(
            '\n',
          ),
        };
      }),
  );
  const runs = unreadable.flatMap(({ problems }) =>
    problems.map(
      ({ file, line, code, message }, i): Remark => ({
        path: file,
        line: line ?? 1,
        title: 'unreadable run',
        message: echo(message, 500),
        kind: 'error',
        identity: ['unreadable', file, code, message, i].join('\n'),
      }),
    ),
  );
  const doubts = remarks.map(
    ({ file, line, code, message }): Remark => ({
      path: file,
      line: line ?? 1,
      title: 'worth a look',
      message: echo(message, 500),
      kind: 'warning',
      identity: ['remark', file, code, message].join('\n'),
    }),
  );
  const stale = results.flatMap(({ path, why }): Remark[] =>
    why === null
      ? []
      : [
          {
            path,
            line: 1,
            title: 'stale result',
            message: echo(why, 500),
            kind: 'warning',
            identity: ['stale', path].join('\n'),
          },
        ],
  );
  return [...criteria, ...runs, ...doubts, ...stale];
}

function data(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function property(text: string): string {
  return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
