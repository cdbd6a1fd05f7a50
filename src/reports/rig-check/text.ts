import { amount, fixed, percent } from '../../quantity/amount.ts';
import { decimalsFor, upTo } from '../../quantity/format.ts';
import type { RigCheckResult, RigProperty } from '../../result/rig-check.ts';
import {
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
import { budgetLines } from '../text/uncertainty.ts';

const HEADS = {
  good: 'Good',
  out: 'Out of limits',
  'not-checked': 'Not checked (no readings were given)',
} as const;

/** Whether a rig does what its file says, then how well its energies are known. */
export function rigCheckText(result: RigCheckResult, options: TextOptions): string {
  const page = pageOf(options);
  const { rig, standing, properties, gravity, gravityFrom, uncertainty, notes } = result;
  const head = paragraph(page, `${HEADS[standing]}: rig ${versioned(rig.id, rig.config)}.`, 0);
  const ink =
    standing === 'good' ? page.ink.green.bold : standing === 'out' ? page.ink.red.bold : page.ink.bold;
  const lines = [
    ...head.map((line) => ink(line)),
    ...paragraph(page, `g = ${gravity.toFixed(4)} m/s² (${gravityFrom})`),
    ...section(page, 'Checks', checks(page, properties)),
    ...section(page, 'Uncertainty of an energy', uncertainty === null ? [] : budgetLines(page, uncertainty)),
    ...section(page, 'Cautions', cautionList(page, SAFETY.rig)),
    ...section(
      page,
      'Notes',
      notes.flatMap((note) => paragraph(page, sentence(note), 2, 4)),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

const NAMES = {
  'velocity-ratio': 'velocity ratio',
  'height-scale': 'height scale',
  mass: 'falling mass',
} as const;

function checks(page: Page, properties: readonly RigProperty[]): string[] {
  if (properties.length === 0) return [];
  const rows = properties.map(
    ({ property, unit, readings, mean, standardDeviation, interval, limits, standing }) => {
      const decimals = decimalsFor(
        standardDeviation === null || standardDeviation === 0 ? 0.001 : standardDeviation,
      );
      const ends =
        interval === null ? '' : `${fixed(interval.lower, decimals)} to ${fixed(interval.upper, decimals)}`;
      return [
        NAMES[property],
        String(readings),
        amount(mean, decimals, unit),
        ends,
        `${upTo(limits.lower, 3)} to ${upTo(limits.upper, 3)}`,
        standing,
      ];
    },
  );
  const level = percent(properties.find(({ interval }) => interval !== null)?.interval?.level ?? 0.95);
  return [
    ...table(
      page,
      ['', 'readings', 'mean', `${level} interval`, 'limits', ''].map((head, i) => ({
        head,
        align: [1, 2].includes(i) ? 'right' : 'left',
      })),
      rows,
    ),
    ...properties.flatMap(({ property, why }) =>
      paragraph(page, `${NAMES[property]}: ${sentence(why)}`, 2, 4),
    ),
  ];
}
