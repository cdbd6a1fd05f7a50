import { percent } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { methodName, quantityName, verdictWord } from './names.ts';
import { estimateText, intervalText } from './numbers.ts';
import { inVerdictColour, named, type Page, paragraph, sentence, versioned } from './page.ts';

/** The result in one or two sentences, for whoever reads no further. */
export function headline(page: Page, result: ImpactResult): string[] {
  const { verdict } = result;
  const lines = paragraph(page, finding(result), 0).map((line) => page.ink.bold(line));
  if (verdict === null) return lines;
  const by = result.specification;
  const against = by === null ? '' : ` by ${versioned(by.id, by.version)}`;
  const judged = paragraph(page, `Verdict${against}: ${verdictWord(verdict)}.`, 0);
  return [...lines, ...judged.map((line) => inVerdictColour(page, verdict, line))];
}

function finding(result: ImpactResult): string {
  const first = result.estimates[0];
  if (first === undefined) {
    return sentence(`no estimate: ${result.conformance.why ?? 'there is nothing to estimate from'}`);
  }
  const whose = first.sample === undefined ? '' : ` of ${named(first.sample)}`;
  const name = quantityName(first) + whose;
  const { interval, drops, specimens } = first;
  const range =
    interval === null
      ? 'no interval'
      : `${percent(interval.level)} ${interval.sides === 1 ? 'bound' : 'interval'} ${intervalText(first)}`;
  const evidence = `from ${counted(drops, 'drop')} on ${counted(specimens, 'tyre')}`;
  const bound = result.protocol.method === 'rising-height' ? ', for this start and step only' : '';
  if (first.value !== null) {
    const broken =
      result.conformance.status === 'invalid' && result.provisional.length === 0
        ? ' The protocol was broken: not to be relied on.'
        : '';
    return `${sentence(`${name} ${estimateText(first)}, ${range}, ${evidence}${bound}`)}${broken}`;
  }
  const why = first.why === null ? `the ${methodName(first.method)} gives no single best value` : first.why;
  const kept = interval === null ? evidence : `${range}, ${evidence}`;
  return `${sentence(`no single value for the ${name}: ${why}`)} ${sentence(kept)}`;
}
