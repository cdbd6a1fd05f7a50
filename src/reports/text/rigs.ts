import { plain } from '../../quantity/amount.ts';
import { counted, height, upTo } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import type { MassCorrection } from '../../result/mass-correction.ts';
import { named, type Page, paragraph } from './page.ts';

/** Entries beyond this many are counted only; the JSON has them all. */
const MOST = 12;

/** What the drops of each rig go by, where a test has several: gravity, falling mass, heights in reach. */
export function rigs(page: Page, { energy }: ImpactResult): string[] {
  const all = energy.rigs ?? [];
  const lines = all.slice(0, MOST).flatMap(({ rig, gravity, gravityFrom, mass, massFrom, limits }) => {
    const falling = mass === null ? 'm as logged drop by drop' : `m = ${upTo(mass, 4)} kg`;
    const reach =
      limits.min === null && limits.max === null
        ? ''
        : `; heights from ${limits.min === null ? '…' : height(limits.min)} to ${limits.max === null ? '…' : height(limits.max)}`;
    const text = `- ${named(rig)}: ${falling} (${massFrom}); g = ${plain(Number(gravity.toFixed(5)))} m/s² (${gravityFrom})${reach}`;
    return paragraph(page, text, 2, 4);
  });
  return [...lines, ...rest(page, all.length)];
}

/** Falling masses that differ from the stated ones by at most 1 %: the energies go by them. */
export function massCorrections(page: Page, { massCorrections: all = [] }: ImpactResult): string[] {
  const lines = all
    .slice(0, MOST)
    .flatMap((correction) => paragraph(page, `- ${correctionSentence(correction)}`, 2, 4));
  return [...lines, ...rest(page, all.length)];
}

function correctionSentence({ rig, from, stated, used, drops, by, on, ...place }: MassCorrection): string {
  const { least, most } = used;
  const masses = least === most ? upTo(least, 4) : `${upTo(least, 4)} to ${upTo(most, 4)}`;
  const shares = [...new Set([least, most].map((mass) => signed(mass / stated - 1)))].join(' to ');
  const why = from === 'log' ? 'as weighed and logged' : `proven by ${named(by ?? '')}, ${named(on ?? '')}`;
  const lines =
    place.firstLine === place.lastLine
      ? `line ${place.firstLine}`
      : `lines ${place.firstLine} to ${place.lastLine}`;
  const of = rig === null ? '' : ` for ${named(rig)}`;
  return `${masses} kg used, ${upTo(stated, 4)} kg stated${of} (${shares} of the energy), ${why}: ${counted(drops, 'drop')} of ${named(place.file)}, ${lines}`;
}

function signed(share: number): string {
  return `${share < 0 ? '−' : '+'}${upTo(Math.abs(100 * share), 2)} %`;
}

function rest(page: Page, all: number): string[] {
  return all > MOST ? paragraph(page, `- and ${all - MOST} more; --json lists them`, 2, 4) : [];
}
