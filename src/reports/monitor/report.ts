import { fixed } from '../../quantity/amount.ts';
import { counted, decimalsFor } from '../../quantity/format.ts';
import type { MonitoredStandard, MonitorResult } from '../../result/monitor.ts';
import { controlFigure } from '../charts/control.ts';
import { type Block, figure, heading, list, paragraph, type ReportDocument } from '../document/blocks.ts';
import type { Language } from '../words/language.ts';
import { CHARTS, falseAlarms, findingOf, nameOf, SPREADS, saidOf, timesOf } from './words.ts';

/** Check standards over time as a report to print or to keep, in English. */
export function monitorReport(result: MonitorResult, language: Language, version: string): ReportDocument {
  const { standards, touched, notes, inputs } = result;
  const name = inputs.map(({ path }) => path).join(', ');
  return {
    language,
    kind: 'full',
    title: 'Check standards over time',
    name,
    subtitle: `${name} · tirelab ${version}`,
    blocks: [
      ...standards.map((standard) => paragraph(findingOf(standard), 'lead')),
      ...standards.flatMap((standard, i) => ofStandard(standard, i, language)),
      ...(touched.length === 0
        ? []
        : [
            heading('Stored results'),
            {
              kind: 'table' as const,
              caption: 'Stored results and the drift',
              columns: [{ head: 'result' }, { head: 'measured' }, { head: 'standing' }, { head: 'why' }],
              rows: touched.map(({ path, from, to, standing, why }) =>
                [path, [...new Set([from, to])].filter(Boolean).join(' to '), standing, why].map((text) => ({
                  text,
                })),
              ),
            },
          ]),
      ...(notes.length === 0 ? [] : [heading('Notes'), ...list(notes)]),
      heading('Records'),
      {
        kind: 'table',
        caption: 'Files read',
        columns: [{ head: 'file' }, { head: 'SHA-256' }],
        rows: inputs.map(({ path, sha256 }) => [{ text: path }, { text: sha256, isHash: true }]),
      },
    ],
    end: `End of the report on ${name}`,
  };
}

/** What the picture shows, for whoever cannot see it. */
function aroundLimits({ points, signals, base }: MonitoredStandard): string {
  return `${counted(points.length, 'point')} with their limits from ${counted(base.points, 'point')} of the base period, and the cumulative sums below; ${counted(signals.length, 'signal')}.`;
}

function ofStandard(standard: MonitoredStandard, place: number, language: Language): Block[] {
  const { chart, limits, signals, unit } = standard;
  const decimals = decimalsFor(limits.sigma / 3);
  const when = timesOf(standard);
  const title = `${nameOf(standard)}: ${CHARTS[chart]}`;
  const value = unit === null ? 'value' : `value, ${unit}`;
  return [
    heading(title),
    ...figure(
      controlFigure(
        standard,
        { title, alternative: aroundLimits(standard), value },
        `control-${place + 1}`,
        language,
      ),
    ),
    {
      kind: 'table',
      caption: 'Limits',
      columns: [
        { head: '' },
        { head: 'lower limit', align: 'right' },
        { head: 'centre', align: 'right' },
        { head: 'upper limit', align: 'right' },
      ],
      rows: (['value', 'spread'] as const).map((which) => {
        const { lower, centre, upper } = limits[which];
        const what = which === 'value' ? value : SPREADS[chart];
        return [{ text: what }, ...[lower, centre, upper].map((one) => ({ text: fixed(one, decimals) }))];
      }),
    },
    ...list([...saidOf(standard), falseAlarms(standard)]),
    ...(signals.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            caption: 'Signals',
            columns: [{ head: 'from' }, { head: 'to' }, { head: 'signal' }, { head: 'settled' }],
            rows: signals.map(({ by, what, from, to, settled }) =>
              [when(from), when(to), /^[A-Z]/u.test(by) ? `${by}: ${what}` : what, settled ?? 'open'].map(
                (text) => ({
                  text,
                }),
              ),
            ),
          },
        ]),
  ];
}
