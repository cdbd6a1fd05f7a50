import { counted } from '../../quantity/format.ts';
import type { InstrumentStatus, InstrumentsResult } from '../../result/instruments.ts';
import { named, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';

const day = (time: string | null): string => (time === null ? '' : time.slice(0, 10));

/** The calibration register on a day: what needs somebody first, then every instrument, then what was measured in doubt. */
export function instrumentsText(result: InstrumentsResult, options: TextOptions): string {
  const page = pageOf(options);
  const { asOf, instruments, doubtful, results, standing } = result;
  const of = (which: InstrumentStatus['standing']) => {
    const names = instruments
      .filter((one) => one.standing === which)
      .map(({ instrument }) => named(instrument));
    return names.length === 0 ? [] : [`${which}: ${names.join(', ')}`];
  };
  const touched = results.filter(({ standing: how }) => how === 'touched' || how === 'overdue').length;
  const said = [
    ...of('failed'),
    ...of('overdue'),
    ...of('due'),
    ...(touched > 0 ? [`${counted(touched, 'use')} of a gauge in stored results in doubt`] : []),
  ];
  const ink = standing === 'in-order' ? page.ink.green.bold : page.ink.red.bold;
  const head = said.length === 0 ? `All in date on ${asOf}.` : `On ${asOf}: ${said.join('; ')}.`;
  const left = (head_: string, least?: number) =>
    ({ head: head_, align: 'left', ...(least === undefined ? {} : { least }) }) as const;
  const lines = [
    ...paragraph(page, head, 0).map((line) => ink(line)),
    ...section(
      page,
      'Instruments',
      table(
        page,
        ['', 'quantity', 'last good', 'last bad', 'due', 'certificate', ''].map((one, i) =>
          left(one, i < 2 || i === 5 ? 8 : undefined),
        ),
        instruments.map((one) => [
          named(one.instrument),
          named(one.quantity ?? '-'),
          day(one.lastGood),
          day(one.lastBad),
          day(one.due),
          named(one.certificate ?? '-'),
          one.standing,
        ]),
      ),
    ),
    ...section(
      page,
      'In doubt, from the last good check to the next good one',
      doubtful.flatMap(({ instrument, from, bad, to, settled }) =>
        paragraph(
          page,
          `${named(instrument)}: ${from === null ? 'from the beginning' : `from ${day(from)}`}, found bad ${day(bad)}, ${to === null ? 'not good again yet' : `good again ${day(to)}`}${settled === null ? '' : `; settled: ${named(settled)}`}.`,
          2,
          4,
        ),
      ),
    ),
    ...section(
      page,
      'Stored results',
      results.length === 0
        ? []
        : table(
            page,
            [left('result', 12), left('gauge', 6), left('measured'), left(''), left('why', 20)],
            results.map((one) => [
              named(one.path),
              named(one.instrument ?? '-'),
              [...new Set([day(one.from), day(one.to)])].filter((text) => text !== '').join(' to '),
              one.standing,
              sentence(one.why),
            ]),
          ),
    ),
  ];
  return `${lines.join('\n')}\n`;
}
