import { percent, written } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { Estimate } from '../../result/estimate.ts';
import type { ExportedCriterion, ExportedResult } from '../../result/export.ts';
import { estimates } from '../text/estimates.ts';
import { quantityName } from '../text/names.ts';
import { named, pageOf, paragraph, section, type TextOptions, versioned } from '../text/page.ts';

/** A result for outside the house, in words. */
export function exportText(exported: ExportedResult, options: TextOptions): string {
  const { item, source, kind, protocol, energy, conformance, sample, criteria, verdict } = exported;
  const page = pageOf(options);
  const test = kind === 'endurance' ? 'Drum test' : 'Drop test';
  const size =
    kind === 'endurance'
      ? counted(sample.specimens, 'tyre')
      : `${counted(sample.validDrops, 'valid drop')} on ${counted(sample.specimens, 'tyre')}, ${sample.failures} failed`;
  const departures = conformance.deviations.map(
    ({ code, severity, scope, count }) => `${code}, ${severity}, ${scope}: ${counted(count, 'time')}`,
  );
  const kept = [
    departures.length === 0 ? `None: ${conformance.status}.` : `${conformance.status}:`,
    ...departures,
  ].flatMap((line) => paragraph(page, line));
  const method = protocol.method === null ? '' : `, ${protocol.method}`;
  const found = exported.estimates.map((estimate) => ({ ...estimate, why: null }) as Estimate);
  return `${[
    ...paragraph(
      page,
      `${test} of ${named(item)} by ${versioned(protocol.id, protocol.version)}${method}: ${size}.`,
      0,
    ),
    ...(energy === null ? [] : paragraph(page, `Energy: ${energy.definition}.`, 0)),
    ...section(page, 'Estimates', estimates(page, { estimates: found })),
    ...section(page, 'Departures from the protocol', kept),
    ...section(
      page,
      'Limits',
      (criteria ?? []).flatMap((criterion) => paragraph(page, limitLine(criterion))),
    ),
    ...(verdict === null ? [] : ['', ...paragraph(page, `Verdict: ${verdict}.`, 0)]),
    '',
    ...paragraph(page, `From the full result with SHA-256 ${source.sha256}.`, 0),
  ].join('\n')}\n`;
}

function limitLine(criterion: ExportedCriterion): string {
  const { limit, verdict } = criterion;
  const say = (value: number | null) =>
    value === null ? 'open' : limit.unit === '1' ? percent(value) : written(value, limit.unit);
  const asked =
    limit.within !== undefined
      ? `${say(limit.within.lower)} to ${say(limit.within.upper)}`
      : limit.atLeast !== undefined
        ? `at least ${say(limit.atLeast)}`
        : limit.atMost !== undefined
          ? `at most ${say(limit.atMost)}`
          : 'as agreed';
  return `${quantityName(criterion)} ${asked}: ${verdict.replaceAll('-', ' ')}`;
}
