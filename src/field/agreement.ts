import type { FieldAgreement } from '../result/field.ts';
import { studentLaw } from '../statistics/laws/student.ts';
import { chanceOfFullAgreement, kendall } from '../statistics/rank/kendall.ts';
import { fitLine } from '../statistics/straight-line/fit.ts';
import { LEVEL } from './rates.ts';

/** Below this a line has fewer than three degrees of freedom (common practice, no source). */
const LEAST_FOR_A_LINE = 5;

/**
 * Whether the field has fewer flats where the laboratory has more energy: Kendall's tau of energy and −rate with its exact chance, and a
 * straight line only where there are enough constructions.
 *
 * @param both J of the laboratory and flats per 1,000 km of each construction that both know
 */
export function agreementOf(both: FieldAgreement['constructions']): FieldAgreement {
  const n = both.length;
  if (n < 2) {
    const why = `found ${n} construction(s) in both, expected two or more; a ranking needs something to rank`;
    return {
      constructions: both,
      tau: null,
      chance: null,
      method: null,
      chanceOfFullAgreement: null,
      regression: null,
      why,
    };
  }
  const energies = both.map(({ energy }) => energy);
  const { coefficient, pOneSided, method } = kendall(
    energies,
    both.map(({ rate }) => -rate),
  );
  return {
    constructions: both,
    tau: coefficient,
    chance: pOneSided,
    method,
    chanceOfFullAgreement: chanceOfFullAgreement(n),
    regression: n < LEAST_FOR_A_LINE ? null : lineOf(both),
    why:
      n < LEAST_FOR_A_LINE
        ? `${n} constructions allow no line (${LEAST_FOR_A_LINE} or more are needed), only their order`
        : 'a straight line by least squares, every construction alike',
  };
}

function lineOf(both: FieldAgreement['constructions']): FieldAgreement['regression'] {
  const energies = both.map(({ energy }) => energy);
  if (energies.every((energy) => energy === energies[0])) return null;
  const { slope, slopeError, degrees } = fitLine(
    energies,
    both.map(({ rate }) => rate),
  );
  const half = studentLaw(degrees).quantileOfSf((1 - LEVEL) / 2) * slopeError;
  return { slope, lower: slope - half, upper: slope + half, level: LEVEL };
}
