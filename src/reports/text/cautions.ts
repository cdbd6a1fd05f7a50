import type { ImpactResult } from '../../result/analysis.ts';
import { type Page, paragraph } from './page.ts';

/** What a reader must know before using the numbers: first what weakens these, then what holds of all. */
export function cautions(page: Page, result: ImpactResult): string[] {
  return [...ofThisResult(result), ...ALWAYS].flatMap((text) => paragraph(page, `- ${text}`, 2, 4));
}

function ofThisResult(result: ImpactResult): string[] {
  const { method } = result.protocol;
  const first = result.estimates[0];
  const calibrated = first?.interval?.method === 'calibrated';
  const found: string[] = [];
  if (method === 'rising-height') {
    found.push(
      'A rising-height result is bound to its start height and step: it may be compared only with tests of the same mass, start, step, pressure, rim and rule of hits. The mean of the noted heights is biased and is no substitute.',
    );
  } else if (first !== undefined && first.drops > first.specimens) {
    const looks = `The ${first.drops} drops on ${first.specimens} ${first.specimens === 1 ? 'tyre' : 'tyres'} are repeat looks at the same tyres`;
    found.push(
      calibrated
        ? `${looks}. The calibrated intervals take 70 % of the variance to lie between tyres; all others take the drops as independent and are likely too narrow (nominal 95 % held in about 81 % of simulated tests of 3 tyres with 8 drops each).`
        : `${looks}, taken here as independent: the intervals are likely too narrow (nominal 95 % held in about 81 % of simulated tests of 3 tyres with 8 drops each).`,
    );
  }
  const profile = result.estimates.some(({ interval }) => interval?.method === 'profile-likelihood');
  if (profile && !calibrated && method === 'up-and-down' && first !== undefined && first.drops <= 60) {
    found.push(
      'From 20 to 50 drops, nominal 95 % profile-likelihood intervals held in about 89 to 95 % of simulated up-and-down tests: read them as a little too narrow.' +
        (first.drops < 20 ? ' With fewer drops they hold less often still.' : ''),
    );
  }
  if (result.verdict !== null) {
    found.push('The verdict is a statement within this lab, unless the lab is accredited for this method.');
  }
  return found;
}

const ALWAYS: readonly string[] = [
  'The result holds for the tyres tested and for this protocol. Joules of a drop are not life on the road.',
  'It replaces neither ISO 4210, ISO 5775 and local rules nor an accredited test, and does not say that a tyre is safe to sell.',
  'Never reach under a raised mass; keep clear of an inflated tyre. tirelab does not know the state of the rig.',
];
