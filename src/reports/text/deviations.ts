import type { ListedDeviation, Severity } from '../../conformance/deviation.ts';
import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { named, type Page, paragraph, sentence } from './page.ts';

/** The worst first. */
const SEVERITIES: readonly Severity[] = ['invalidating', 'minor', 'note'];
/** Of one code, so many are shown in full; the JSON has them all. */
const SHOWN = 3;
/** Codes beyond this many are counted. */
const MOST_CODES = 15;

/** The departures from the protocol, the worst first, each with its place and what it does to the estimate. */
export function deviations(page: Page, { conformance }: Pick<ImpactResult, 'conformance'>): string[] {
  if (conformance.deviations.length === 0) return paragraph(page, 'None: the protocol was kept.');
  const codes = byCode(conformance.deviations);
  const shown = codes.slice(0, MOST_CODES);
  const lines = [
    ...paragraph(page, tally(conformance)),
    ...shown.flatMap((entries) => ofOneCode(page, entries)),
  ];
  const rest = codes.slice(MOST_CODES).flat();
  if (rest.length > 0) {
    const more = `and ${total(rest)} more of ${counted(codes.length - MOST_CODES, 'other code')}; --json lists them`;
    lines.push(...paragraph(page, more));
  }
  return lines;
}

function byCode(all: readonly ListedDeviation[]): ListedDeviation[][] {
  const codes = new Map<string, ListedDeviation[]>();
  for (const deviation of all) {
    const key = `${deviation.severity} ${deviation.code}`;
    const same = codes.get(key);
    if (same === undefined) codes.set(key, [deviation]);
    else same.push(deviation);
  }
  const rank = ([first]: ListedDeviation[]) => SEVERITIES.indexOf(first!.severity);
  return [...codes.values()].sort((a, b) => rank(a) - rank(b));
}

function ofOneCode(page: Page, entries: readonly ListedDeviation[]): string[] {
  const shown = entries.slice(0, SHOWN);
  const rest = entries.slice(SHOWN);
  const lines = shown.flatMap((deviation) => {
    const severity = inSeverityColour(page, deviation.severity);
    const [first = '', ...others] = paragraph(
      page,
      `${deviation.code} ${deviation.severity}${placeOf(deviation)}`,
    );
    const head = first.replace(` ${deviation.severity}`, (word) => severity(word));
    return [head, ...others, ...paragraph(page, sentence(deviation.message), 4)];
  });
  if (rest.length === 0) return lines;
  const where = rest.flatMap((entry) => [entry.firstLine ?? entry.line, entry.lastLine ?? entry.line]);
  const known = where.filter((line) => line !== null);
  const span =
    known.length === 0
      ? ''
      : `, lines ${known.reduce((a, b) => Math.min(a, b))} to ${known.reduce((a, b) => Math.max(a, b))}`;
  return [...lines, ...paragraph(page, `and ${total(rest)} more ${entries[0]!.code}${span}`, 4)];
}

function placeOf({ file, line, firstLine, lastLine, specimen, drop, count }: ListedDeviation): string {
  const parts: string[] = [];
  const summed = count > 1;
  if (summed) parts.push(`${count} times`);
  if (summed && firstLine !== undefined && lastLine !== undefined) {
    parts.push(`${file === null ? '' : `${named(file)} `}lines ${firstLine} to ${lastLine}`);
  } else if (file !== null) parts.push(line === null ? named(file) : `${named(file)}:${line}`);
  if (specimen !== null) parts.push(`tyre ${named(specimen)}`);
  if (drop !== null) parts.push(`drop ${drop}`);
  return parts.length === 0 ? '' : `, ${parts.join(', ')}`;
}

function tally({ deviations: all, status, excluded, why }: ImpactResult['conformance']): string {
  const each = SEVERITIES.flatMap((severity) => {
    const count = total(all.filter((deviation) => deviation.severity === severity));
    if (count === 0) return [];
    return [severity === 'note' ? counted(count, 'note') : `${count} ${severity}`];
  });
  const out = excluded > 0 ? `; ${counted(excluded, 'drop')} left out of the estimates` : '';
  const broken = why === null ? '' : ` ${sentence(why)}`;
  return `${sentence(`${status}: ${each.join(', ')}${out}`)}${broken}`;
}

function total(entries: readonly ListedDeviation[]): number {
  return entries.reduce((sum, { count }) => sum + count, 0);
}

function inSeverityColour(page: Page, severity: Severity): (text: string) => string {
  if (severity === 'invalidating') return page.ink.red;
  return severity === 'minor' ? page.ink.yellow : page.ink.dim;
}
