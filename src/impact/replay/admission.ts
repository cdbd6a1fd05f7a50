import { CATALOGUE, codeIn } from '../../conformance/catalogue/catalogue.ts';
import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { raiseAt, type Visit } from './replayed.ts';

/**
 * Whether the log itself lets a drop count. One that it calls invalid (`valid: no`) is repeated at its height and
 * enters no count (CONTRACT, rules of the methods): with a reason from the catalogue it is simply out, without one
 * the estimate is given both ways. A drop without an outcome cannot count either (DROP-44).
 */
export function admit(visit: Visit, list: DeviationList): void {
  const { drop } = visit;
  if (visit.use === 'set-aside') return;
  if (!drop.valid) exclude(visit, list);
  else if (!visit.steers) {
    const what = drop.outcome === null ? 'no outcome' : 'an outcome that could not be judged';
    raiseAt(list, visit, 'DROP-44', () => `${what} for ${quote(drop.specimen)}, expected failed or survived`);
  }
}

function exclude(visit: Visit, list: DeviationList): void {
  const reason = visit.drop.reason?.trim() ?? '';
  const entry = CATALOGUE.get(codeIn(reason) ?? '');
  if (entry?.excuses) {
    visit.use = 'invalid';
    visit.because = entry.code;
    const found = () => `the log calls this drop invalid: ${entry.title} (${quote(reason)})`;
    raiseAt(list, visit, entry.code, found, EXCUSED);
  } else {
    visit.use = 'unexplained';
    visit.because = 'DROP-54';
    const found = () => `the log calls this drop invalid ${givenReason(reason, entry?.title)}`;
    const { outcome } = visit.drop;
    raiseAt(list, visit, 'DROP-54', found, outcome === 'failed' || outcome === 'survived' ? {} : NO_OUTCOME);
  }
}

const EXCUSED = {
  severity: 'invalidating',
  scope: 'drop',
  effect: 'the drop is left out of the estimate and repeated at its height',
} as const;
const NO_OUTCOME = {
  effect: 'it is left out of the estimate, and has no outcome to be taken back with',
} as const;

function givenReason(reason: string, title: string | undefined): string {
  if (reason === '') return 'without a reason, expected a code of the catalogue such as DROP-16';
  if (title !== undefined)
    return `for ${quote(reason)} (${title}), which is no ground for leaving out a drop`;
  return `for ${quote(reason)}, expected a code of the catalogue such as DROP-16`;
}
