import { fixed, percent, plain } from '../../quantity/amount.ts';
import { counted, kilograms, significant } from '../../quantity/format.ts';
import type { PlanResult } from '../../result/plan.ts';
import { named, type Page, pageOf, paragraph, section, type TextOptions, versioned } from '../text/page.ts';
import { cautionList, SAFETY } from '../text/safety.ts';
import { type Column, table } from '../text/table.ts';
import { answers } from './answers.ts';

/** Rows of the run sheet that a text shows; the whole of it is the CSV. */
const SHOWN = 12;

/** A plan for people: what the test can show first, then its levels, then the sheet's beginning. */
export function planText(result: PlanResult, options: TextOptions): string {
  const page = pageOf(options);
  const title = `Plan of ${versioned(result.protocol.id, result.protocol.version)} (${result.protocol.method}).`;
  const lines = [
    ...paragraph(page, title, 0).map((line) => page.ink.bold(line)),
    ...section(page, 'Assumed', assumed(page, result, options.version)),
    ...section(page, 'What it can show', answers(page, result)),
    ...section(page, 'Proposed start and step', proposal(page, result)),
    ...section(page, 'Levels', levels(page, result)),
    ...section(
      page,
      `Run sheet (${counted(result.sheet.length, 'row')}, seed ${result.seed})`,
      sheet(page, result),
    ),
    ...section(
      page,
      'Notes',
      result.notes.flatMap((note) => paragraph(page, `- ${note}`, 2, 4)),
    ),
    ...section(page, 'Cautions', cautionList(page, SAFETY.drop)),
  ];
  return `${lines.join('\n')}\n`;
}

function assumed(
  page: Page,
  { assumed: of, energy, minutes, tests, seed, defaults }: PlanResult,
  version: string,
): string[] {
  const mass = energy.mass === null ? '' : `; m = ${plain(energy.mass)} kg`;
  const tyres =
    of === null
      ? 'tyres: nothing, so nothing is simulated'
      : `tyres: ${of.law} strength, median ${significant(of.median, 4)} J, spread ${of.spreadUnit === 'J' ? `${significant(of.spread, 3)} J` : `${percent(Number(of.spread.toPrecision(3)))} (of ln E)`}, ${of.from}`;
  const more = [
    ...(of !== null && of.between > 0 ? [`${percent(of.between)} of the variance between tyres`] : []),
    ...(of !== null && of.damage > 0 ? [`${percent(of.damage)} lost by each hit survived`] : []),
  ];
  return [
    ...paragraph(page, [tyres, ...more].join('; '), 2, 4),
    ...paragraph(
      page,
      `time: ${plain(minutes.perDrop)} min a drop, ${plain(minutes.perSpecimen)} min to mount and prepare a tyre`,
      2,
      4,
    ),
    ...paragraph(
      page,
      `energy: m·g·h${mass}; g = ${plain(Number(energy.gravity.toFixed(5)))} m/s² (${energy.gravityFrom})`,
      2,
      4,
    ),
    ...paragraph(page, `simulated: ${tests} tests for each number, seed ${seed}; tirelab ${version}`, 2, 4),
    ...(defaults.length > 0
      ? paragraph(page, `taken for want of a statement: ${defaults.join('; ')}`, 2, 4)
      : []),
  ];
}

function proposal(page: Page, { proposal: found }: PlanResult): string[] {
  if (found === null) return [];
  return paragraph(
    page,
    `start: ${plain(found.start)} mm, step: ${plain(found.step)} mm; ${found.why}. Median ${significant(found.median, 4)} J, spread ${significant(found.spread, 3)} J.`,
  );
}

function levels(page: Page, { levels: all }: PlanResult): string[] {
  const right = (head: string): Column => ({ head, align: 'right' });
  const byMass = new Set(all.map(({ mass }) => mass)).size > 1;
  return table(
    page,
    [
      right('height'),
      ...(byMass ? [right('mass')] : []),
      right('energy'),
      right('impact speed'),
      { head: '', align: 'left' },
    ],
    all
      .toReversed()
      .map(({ height, mass, energy, impactSpeed, isStart }) => [
        `${Number(height.toFixed(1))} mm`,
        ...(byMass ? [mass === null ? '' : kilograms(mass)] : []),
        energy === null ? '' : `${fixed(energy, 2)} J`,
        `${fixed(impactSpeed, 2)} m/s`,
        isStart ? 'start' : '',
      ]),
  );
}

function sheet(page: Page, { sheet: rows }: PlanResult): string[] {
  const right = (head: string): Column => ({ head, align: 'right' });
  const several = rows.some(({ construction }) => construction !== null);
  const left = (head: string): Column => ({ head, align: 'left', least: 8 });
  const shown = rows.slice(0, SHOWN);
  const more = rows.length - shown.length;
  return [
    ...table(
      page,
      [
        right('drop'),
        right('block'),
        left('specimen'),
        ...(several ? [left('construction')] : []),
        right('site'),
        right('height'),
      ],
      shown.map(({ order, block, specimen, construction, site, plannedHeight }) => [
        String(order),
        String(block),
        named(specimen),
        ...(several ? [construction === null ? '' : named(construction)] : []),
        `${Number(site.toFixed(1))}°`,
        plannedHeight === null ? 'by the rule' : `${Number(plannedHeight.toFixed(1))} mm`,
      ]),
    ),
    ...paragraph(
      page,
      `${more > 0 ? `and ${more} more; ` : ''}the whole sheet: --sheet FILE, or --format csv. "tirelab next" gives each height.`,
    ),
  ];
}
