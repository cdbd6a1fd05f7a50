import { amount, fixed, percent } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { CarriedUncertainty, UncertaintyLine, UncertaintyResult } from '../../result/uncertainty.ts';
import { quantityName } from './names.ts';
import { named, type Page, paragraph, sentence } from './page.ts';
import { table } from './table.ts';

/** What the rig adds to the estimates, and the budget behind it; nothing where the rig states none. */
export function uncertainty(page: Page, { uncertainty: found }: ImpactResult): string[] {
  return found === undefined ? [] : [...carried(page, found.estimates), '', ...budgetLines(page, found)];
}

function carried(page: Page, estimates: readonly CarriedUncertainty[]): string[] {
  const columns = ['of', 'drops', 'rig', 'both', 'interval with the rig'].map(
    (head, i) => ({ head, align: i === 0 || i === 4 ? 'left' : 'right' }) as const,
  );
  const rows = estimates.map((entry) => {
    const decimals = decimalsFor(entry.combined);
    const say = (value: number) => fixed(value, decimals);
    return [
      quantityName(entry),
      say(entry.standardError),
      say(entry.common),
      say(entry.combined),
      intervalWords(entry, decimals),
    ];
  });
  const level = estimates[0]?.level ?? 0.95;
  const text = `standard uncertainties in J: that of the drops shrinks with their number, that of the rig is common to all of them and does not; the interval (${percent(level)}) is that of the drops, each half in quadrature with the rig's. Between two constructions on this rig the common part cancels from the ratio`;
  return [...table(page, columns, rows), ...paragraph(page, sentence(text))];
}

function intervalWords({ interval: found }: CarriedUncertainty, decimals: number): string {
  if (found === null) return 'none';
  const lower = found.lower === null ? 'no lower limit' : fixed(found.lower, decimals);
  return found.upper === null
    ? `from ${lower}, no upper limit`
    : `${lower} to ${amount(found.upper, decimals, 'J')}`;
}

/** The budget of one drop, line by line, and whether drawing agrees. */
export function budgetLines(
  page: Page,
  { at, lines, common, drop, whole, check }: Omit<UncertaintyResult, 'estimates' | 'notes'>,
): string[] {
  const rows = lines.map((line) => [
    line.of,
    named(line.source),
    stated(line),
    line.degrees === null ? 'infinite' : significant(line.degrees, 3),
    line.scope,
    amount(line.contribution, 3, 'J'),
  ]);
  const heads = ['of', 'source', 'standard', 'degrees', 'scope', 'adds'];
  const one = `one drop of ${amount(at.energy, 1, 'J')} (${amount(at.height, 0, 'mm')}): common ${amount(common.standardUncertainty, 3, 'J')}, from drop to drop ${amount(drop.standardUncertainty, 3, 'J')} (in the spread already, not added), together ${amount(whole.standardUncertainty, 3, 'J')} with ${whole.degrees === null ? 'infinite' : whole.degrees.toFixed(0)} effective degrees of freedom`;
  const drawn = `${check.agrees ? 'drawing the inputs agrees' : 'DRAWING THE INPUTS DOES NOT AGREE'} at ${significant(check.energy, 2)} J: ${interval(check.drawn)} against ${interval(check.propagated)} by propagation (${check.trials} draws, seed ${check.seed}, ends within ${significant(check.tolerance, 1)} J)`;
  return [
    ...table(
      page,
      heads.map((head, i) => ({
        head,
        align: [2, 3, 5].includes(i) ? 'right' : 'left',
        ...(i === 1 ? { least: 12 } : {}),
      })),
      rows,
    ),
    ...paragraph(page, sentence(one)),
    ...paragraph(page, sentence(drawn)),
  ];
}

function interval({ lower, upper }: { readonly lower: number; readonly upper: number }): string {
  return `${fixed(lower, 2)} to ${amount(upper, 2, 'J')}`;
}

function stated({ standardUncertainty, unit }: UncertaintyLine): string {
  return unit === '1'
    ? `${significant(100 * standardUncertainty, 2)} %`
    : `${significant(standardUncertainty, 2)} ${unit}`;
}
