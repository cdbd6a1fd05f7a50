import type { Criterion } from '../documents/kinds.ts';
import { echo } from '../problem/echo.ts';
import { decimalsToTell, fixed } from '../quantity/amount.ts';
import { counted } from '../quantity/format.ts';
import type { JudgedCriterion } from '../result/criterion.ts';
import { type Measurement, withoutEvidence } from './evidence.ts';
import { judged } from './judge.ts';
import { type Acceptance, acceptanceOf, accepts, guarded, limitInWords } from './limit.ts';

/** How many tyres a sentence names before it counts. */
const NAMED = 5;

/**
 * A criterion that every measured tyre must meet by itself: mass, width, pressure hold. No estimate and no
 * confidence; a stated guard band moves the limit. Tyres without a measurement are said and not judged; where none
 * was measured, nothing was tested, and the overall verdict does not count the criterion.
 */
export function judgeEach(criterion: Criterion, measurements: readonly Measurement[]): JudgedCriterion {
  const measured = measurements.flatMap(({ specimen, value }) =>
    value !== null && Number.isFinite(value) ? [{ specimen, value }] : [],
  );
  const missing = measurements.length - measured.length;
  const evidence = withoutEvidence('none', null, measured.length);
  if (measured.length === 0) {
    const why = `the ${criterion.quantity} of no tyre was measured`;
    return judged(criterion, evidence, 'not-tested', why, false);
  }
  const limit = acceptanceOf(criterion.limit);
  const guard = criterion.rule === 'guard-band' ? (criterion.guard ?? 0) : 0;
  const range = guarded(limit, guard);
  const beyond = measured.filter(({ value }) => !accepts(range, value));
  const { unit } = criterion.limit;
  const asked = limitInWords(limit, unit) + (guard > 0 ? ` less a guard band of ${fixed(guard, 3)}` : '');
  const left = missing > 0 ? `; ${counted(missing, 'tyre')} not measured` : '';
  const summary = {
    measured: {
      specimens: measured.length,
      missing,
      smallest: measured.reduce((least, { value }) => Math.min(least, value), Infinity),
      largest: measured.reduce((most, { value }) => Math.max(most, value), -Infinity),
      beyond: beyond.map(({ specimen }) => specimen),
    },
  };
  if (beyond.length > 0) {
    const why = `${beyond.length} of ${counted(measured.length, 'measured tyre')} beyond ${asked}: ${named(beyond, range, unit)}${left}`;
    return { ...judged(criterion, evidence, 'fail', why), ...summary };
  }
  const all =
    measured.length === 1 ? 'the one measured tyre meets' : `all ${measured.length} measured tyres meet`;
  const tooFew = criterion.minSpecimens !== null && measured.length < criterion.minSpecimens;
  const want = tooFew ? `; ${criterion.minSpecimens} asked for` : '';
  const why = `${all} ${asked}${want}${left}`;
  return { ...judged(criterion, evidence, tooFew ? 'inconclusive' : 'pass', why), ...summary };
}

function named(
  beyond: readonly { specimen: string; value: number }[],
  range: Acceptance,
  unit: string,
): string {
  const shown = beyond.slice(0, NAMED).map(({ specimen, value }) => {
    const passed = range.lower !== null && value < range.lower ? range.lower : (range.upper ?? value);
    const text = fixed(value, decimalsToTell(value, passed, 1)).replace(/\.0$/u, '');
    return `${echo(specimen, 24)} (${text}${unit === '1' ? '' : ` ${unit}`})`;
  });
  const rest = beyond.length - shown.length;
  return shown.join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}
