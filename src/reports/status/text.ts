import { counted } from '../../quantity/format.ts';
import type { Forecast, RunStatus, StatusResult } from '../../result/status.ts';
import { quantityName } from '../text/names.ts';
import { estimateText, intervalText } from '../text/numbers.ts';
import {
  named,
  type Page,
  pageOf,
  paragraph,
  section,
  sentence,
  type TextOptions,
  versioned,
} from '../text/page.ts';
import { cautionList, SAFETY } from '../text/safety.ts';
import { table } from '../text/table.ts';

/** How running drum tests stand, one section a run, what is due first. */
export function statusText(result: StatusResult, options: TextOptions): string {
  const page = pageOf(options);
  const due = result.runs.flatMap(({ run, forecasts }) =>
    forecasts
      .filter(({ standing }) => standing === 'due')
      .map(({ what }) => `${named(run ?? '')}: ${named(what)}`),
  );
  const head =
    due.length === 0
      ? `Nothing is due by the end of ${result.asOf}.`
      : `Due by the end of ${result.asOf}: ${due.join('; ')}.`;
  const lines = [
    ...paragraph(page, head, 0).map((line) => page.ink.bold(line)),
    ...result.runs.flatMap((run) => section(page, `Run ${named(run.run ?? '')}`, ofRun(page, run))),
    ...section(page, 'Cautions', cautionList(page, SAFETY.drum)),
  ];
  return `${lines.join('\n')}\n`;
}

function ofRun(page: Page, run: RunStatus): string[] {
  const { protocol, distance, planned, block, lastTime, pace, deviations, lastEvents, lastInspection, wear } =
    run;
  const of = planned === null ? '' : ` of ${planned} km`;
  const reached =
    distance.logged === null
      ? 'no log of the drum yet'
      : `${distance.logged.toFixed(1)}${of === '' ? ' km' : of}, ${distance.atCondition!.toFixed(1)} km at condition${block === null ? '' : `, in block ${named(block)}`}`;
  const codes = deviations.map(
    ({ code, severity, count }) => `${code} ${severity}${count > 1 ? ` ${count} times` : ''}`,
  );
  const said = [
    `protocol ${versioned(protocol.id, protocol.version)}: ${reached}`,
    ...(lastTime === null
      ? []
      : [`last row ${lastTime}${pace === null ? '' : `, ${pace.toFixed(1)} km a calendar hour so far`}`]),
    ...(run.restart === null
      ? []
      : [
          `${run.restart.allowed ? 'may be started again' : 'not to be started again by the protocol'}: ${run.restart.why}`,
        ]),
    `${counted(run.interruptions, 'interruption')}; ${codes.length === 0 ? 'no deviations' : codes.join(', ')}`,
    ...(lastInspection === null
      ? []
      : [
          `last looked at ${lastInspection.distance} km${lastInspection.ago === null ? '' : `, ${lastInspection.ago.toFixed(1)} km ago`}`,
        ]),
    ...(run.eventsSinceLook ? [`${counted(run.eventsSinceLook, 'event')} noted since then`] : []),
    ...lastEvents
      .slice(0, 3)
      .map(
        ({ time, event, value }) =>
          `noted ${time}: ${named(event)}${value === null ? '' : ` (${named(value)})`}`,
      ),
    ...wear
      .filter(({ quantity }) => quantity === 'wearLife')
      .map(
        (entry) =>
          `${quantityName(entry)}, ${named(entry.variant ?? '')}: ${estimateText(entry)}, ${intervalText(entry)}${entry.why === null ? '' : ` (${entry.why})`}`,
      ),
  ];
  return [
    ...said.flatMap((text) => paragraph(page, sentence(text), 2, 4)),
    ...(run.forecasts.length === 0 ? [] : ['', ...forecastTable(page, run.forecasts)]),
  ];
}

function forecastTable(page: Page, forecasts: readonly Forecast[]): string[] {
  return table(
    page,
    [
      { head: '', align: 'left', least: 10 },
      { head: 'km', align: 'right' },
      { head: '', align: 'left' },
      { head: 'earliest', align: 'left' },
      { head: 'at the pace so far', align: 'left' },
    ],
    forecasts.map(({ what, at, standing, earliest, atPace }) => [
      named(what),
      String(at),
      standing,
      earliest ?? '',
      atPace ?? '',
    ]),
  );
}
