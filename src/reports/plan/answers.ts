import { fixed, percent } from '../../quantity/amount.ts';
import { decimalsFor, significant } from '../../quantity/format.ts';
import type { Effort, PlannedGain, PlannedPrecision, PlanResult } from '../../result/plan.ts';
import { shareText } from '../simulation/numbers.ts';
import { type Page, paragraph, sentence } from '../text/page.ts';

/** What sizes promise, sentence by sentence. */
export function answers(page: Page, result: PlanResult): string[] {
  const { asWritten, precision, gain, atHand, sizeUnit: unit, confidence } = result;
  if (result.assumed === null) return paragraph(page, sentence(asWritten.why ?? 'nothing was simulated'));
  const texts = [
    `As written: ${asWritten.found === null ? `${asWritten.why}.` : precise(asWritten.found, unit, confidence)}`,
    ...(precision === null
      ? []
      : [
          `For the median within ± ${significant(precision.wished, 3)} J: ${precision.found === null ? `${precision.why}.` : precise(precision.found, unit, confidence)}`,
        ]),
    ...(gain === null
      ? []
      : [
          `To see a gain of ${percent(gain.wished)} between two constructions in ${percent(gain.wishedPower)} of comparisons: ${gain.found === null ? `${gain.why}.` : `${gain.found.size} ${unit} for each; ${seen(gain.found)}`}`,
        ]),
    ...(atHand === null
      ? []
      : [
          `With the ${atHand.specimens} tyres at hand, half of them for each construction: ${atHand.found === null ? `${atHand.why}.` : `gains from ${percent(Number((100 * atHand.found.gain).toPrecision(2)) / 100)} up; ${seen(atHand.found)}`}`,
        ]),
  ];
  const lines = texts.flatMap((text) => paragraph(page, `- ${text}`, 2, 4));
  const isGain = gain?.found || atHand?.found;
  if (!isGain) return lines;
  const meaning = `A gain counts as seen where two equal constructions would show as large a difference in less than ${percent(Number((1 - confidence).toPrecision(6)))} of pairs.`;
  return [...lines, ...paragraph(page, meaning)];
}

function precise({ size, within, effort }: PlannedPrecision, unit: string, confidence: number): string {
  const decimals = Number.isFinite(within.value) ? decimalsFor(within.error) - 1 : 0;
  const near = Number.isFinite(within.value)
    ? `${percent(confidence)} of tests come within ${fixed(within.value, decimals)} ± ${fixed(within.error, decimals)} J of the true median`
    : `too many tests have no finite median for ${percent(confidence)} of them to come near it`;
  return `${size} ${unit}; ${near}. It ${cost(effort)}`;
}

function seen({ power, effort }: PlannedGain): string {
  return `seen in ${shareText(power)} % of pairs. The two together ${cost(effort).replace('takes', 'take')}`;
}

function cost({ drops, specimens, hours }: Effort): string {
  return `takes ${count(drops)} drops, ${count(specimens)} tyres, about ${hours < 10 ? fixed(hours, 1) : fixed(hours, 0)} h at the rig.`;
}

function count(mean: number): string {
  return Number.isInteger(mean) ? String(mean) : `about ${fixed(mean, 0)}`;
}
