import { echo } from '../../problem/echo.ts';
import { counted } from '../../quantity/format.ts';
import type { Verdict } from '../../result/criterion.ts';
import type { AppliedWaiver, GatedCriterion, GateResult } from '../../result/gate.ts';
import { verdictWord } from '../text/names.ts';

/** The verdict, and how many of the judgements are what. */
export function headline({ judged, since, verdict }: GateResult): string {
  if (judged.length === 0) {
    return since === null
      ? 'Not tested: no specification applies to any construction here.'
      : `Nothing that is judged has changed since ${echo(since.reference)}.`;
  }
  const counts = new Map<Verdict, number>();
  for (const { verdict: own } of judged) counts.set(own, (counts.get(own) ?? 0) + 1);
  const each = [...counts].map(([word, count]) => `${count} ${verdictWord(word)}`).join(', ');
  const all = new Set(judged.map(({ construction }) => construction.path)).size;
  const pairs = judged.length === all ? '' : ` in ${counted(judged.length, 'judgement')}`;
  const whose = all === 1 ? 'its' : 'their';
  return `Verdict: ${verdictWord(verdict)}. ${counted(all, 'construction')} by ${whose} specifications${pairs}: ${each}.`;
}

/** What a waiver says, on whose word, and until when: it is never only a word in a table. */
export function waiverSentence(waiver: AppliedWaiver): string {
  const { id, owner, role, reason, expires, batches, market, insteadOf } = waiver;
  const limits = [
    ...(batches === null ? [] : [`batches ${echo(batches, 100)}`]),
    ...(market === null ? [] : [`market ${echo(market, 100)}`]),
  ];
  const within = limits.length === 0 ? '' : `, for ${limits.join(' and ')} only`;
  return `${verdictWord(insteadOf)}, waived until ${expires} by ${echo(owner, 100)} (${role}; ${echo(id)})${within}: ${echo(reason, 300)}`;
}

/** Why a criterion stands as it does: the waiver where one counts, and what else is to be said. */
export function reasonsOf({ verdict, safety, why, waiver, notes }: GatedCriterion): string {
  const isOpen = verdict !== 'pass' && safety;
  return [
    ...(isOpen ? ['safety criterion'] : []),
    waiver === null ? why : `${waiverSentence(waiver)}; ${why}`,
    ...notes,
  ].join('; ');
}

/** Criteria whose verdict turns with the limit that was tried out. */
export function turnedBy({ judged }: GateResult) {
  return judged.flatMap(({ construction, specification, criteria }) =>
    criteria
      .filter(({ before, verdict }) => before !== undefined && before !== verdict)
      .map((criterion) => ({ construction, specification, criterion, before: criterion.before! })),
  );
}

/** Which limits were tried out, and how many verdicts turn; null where none was. */
export function whatIfSentence(result: GateResult): string | null {
  if (result.whatIf.length === 0) return null;
  const turned = turnedBy(result).length;
  return `What if ${result.whatIf.map((text) => echo(text)).join(' and ')}: ${counted(turned, 'verdict')} would turn. Nothing was written.`;
}

/** What was looked at, where it was not everything; null where it was. */
export function sinceSentence({ since }: GateResult): string | null {
  if (since === null) return null;
  return `Only what changed since ${echo(since.reference)} was judged; ${counted(since.unchanged, 'judgement')} stand as before.`;
}

/** How the stored results stand; null where there are none. */
export function resultsSentence({ results }: GateResult): string | null {
  if (results.length === 0) return null;
  const stale = results.filter(({ state }) => state === 'stale').length;
  const apart = results.filter(({ state, notCompared }) => state === 'current' && notCompared > 0).length;
  const says = [
    `${counted(results.length, 'stored result')}, ${stale === 0 ? 'none stale' : `${stale} stale`}`,
    ...(apart === 0 ? [] : [`${apart} with inputs that are not here and were not compared`]),
  ];
  return `${says.join('; ')}.`;
}
