import type { Criterion, Specification } from '../documents/kinds.ts';
import { specimensOf } from '../impact/rules/method-rules.ts';
import type { Verdict } from '../result/criterion.ts';
import { laws } from '../statistics/laws/laws.ts';
import type { ProfileBasis } from '../statistics/likelihood/constrained.ts';
import { likelihoodRatioCritical } from '../statistics/likelihood/critical.ts';
import { fitLocation } from '../statistics/likelihood/fit-location.ts';
import { type Estimated, estimateQuantile, estimateScale } from '../statistics/likelihood/quantile.ts';
import { type Evidence, withoutEvidence } from '../verdict/evidence.ts';
import { judgeSpecification } from '../verdict/judge-specification.ts';
import { acceptanceOf } from '../verdict/limit.ts';
import { onceAt } from './alike.ts';
import { type Beside, calibratedLimits, profileLimits } from './bounds.ts';
import type { Design } from './design.ts';

/** How often each verdict was given: by criterion, and `''` for the specification as a whole. */
export type VerdictTally = Record<string, Partial<Record<Verdict, number>>>;

/**
 * Judges simulated tests by the same rules as logs. Of the bounds only their place beside the limits matters, and that
 * one likelihood ratio at each limit tells; so the evidence carries a limit itself for a bound that reaches it, and
 * nothing for one that falls short.
 */
export function judging(
  design: Design,
  specification: Specification,
): (basis: ProfileBasis, specimens: number, tally: VerdictTally) => void {
  const { protocol, energyPerLevel } = design;
  const calibrated = calibratedLimits(design);
  const judge = onceAt((basis, specimens) =>
    judgeSpecification(specification, {
      protocol,
      evidenceFor: (criterion) => evidenceOf(criterion, basis, specimens),
      measurementsFor: () => [],
    }),
  );
  return (basis, specimens, tally) => {
    const judged = judge(basis, specimens);
    for (const { id, verdict } of judged.criteria) count(tally, id, verdict);
    count(tally, '', judged.verdict);
  };

  function evidenceOf(criterion: Criterion, basis: ProfileBasis, specimens: number): Evidence {
    const law = laws[protocol.distribution];
    if (criterion.method === 'specimen-effect' && specimensOf(protocol).perSpecimen > 1)
      return withoutEvidence('none', 'verdicts on the specimen effect are not simulated', specimens);
    const fit = basis.fit.kind === 'exists' ? basis.fit : null;
    const ofQuantile = (p: number, perEnergy: number) => {
      const limits = calibrated?.beside ?? profileLimits;
      return bounded(criterion, specimens, {
        estimate: fit && scaled(estimateQuantile(fit, law, p), perEnergy),
        interval: calibrated === null ? 'profile-likelihood' : 'calibrated',
        beside: (limit) => limits(basis, p, limit / perEnergy, criterion.confidence),
      });
    };
    switch (criterion.quantity) {
      case 'medianFailureEnergy':
        return ofQuantile(0.5, 1);
      case 'failureEnergyQuantile':
        return ofQuantile(criterion.probability!, 1);
      case protocol.vary === 'mass' ? 'medianFailureMass' : 'medianFailureHeight':
        return ofQuantile(0.5, 1 / energyPerLevel);
      case 'energySpread':
        return bounded(criterion, specimens, {
          estimate: fit && estimateScale(fit),
          interval: 'profile-likelihood',
          beside(limit) {
            const root = spreadRoot(basis, limit);
            const critical = Math.sqrt(likelihoodRatioCritical(criterion.confidence, 1));
            return { boundAbove: root > critical, boundBelow: root < -critical };
          },
        });
      default:
        return withoutEvidence('none', `this drop test gives no ${criterion.quantity}`, specimens);
    }
  }
}

interface Found {
  readonly estimate: Estimated | null;
  readonly interval: string;
  /** How the one-sided bounds lie beside a value. */
  beside(value: number): Pick<Beside, 'boundAbove' | 'boundBelow'>;
}

function bounded(criterion: Criterion, specimens: number, found: Found): Evidence {
  const { estimate, interval } = found;
  const range = acceptanceOf(criterion.limit);
  let lower: number | null = null;
  let upper: number | null = null;
  for (const limit of [range.lower, range.upper]) {
    if (limit === null) continue;
    const { boundAbove, boundBelow } = found.beside(limit);
    // At or above a lower limit is enough; an upper limit must be passed to be failed.
    if (boundAbove) lower = limit === range.lower ? limit : beyond(limit, 1);
    if (boundBelow) upper ??= limit === range.upper ? limit : beyond(limit, -1);
  }
  return {
    status: 'valid',
    estimate: estimate?.value ?? null,
    standardError: estimate?.standardError ?? null,
    lower,
    upper,
    method: 'censored-likelihood',
    interval,
    specimens,
    why: null,
  };
}

/** A value that no rounding takes for the limit itself. */
function beyond(limit: number, side: 1 | -1): number {
  return limit + side * 1e-6 * Math.max(1, Math.abs(limit));
}

function spreadRoot({ sample, law, supremum, fit }: ProfileBasis, spread: number): number {
  const best = fitLocation(sample, law, spread)?.logLikelihood ?? 0;
  const root = Math.sqrt(Math.max(0, 2 * (supremum - best)));
  if (fit.kind === 'exists') return fit.scale > spread ? root : -root;
  return fit.kind === 'wrong-direction' ? root : -root;
}

function scaled({ value, standardError }: Estimated, factor: number): Estimated {
  return { value: value * factor, standardError: standardError * factor };
}

function count(tally: VerdictTally, id: string, verdict: Verdict): void {
  tally[id] ??= {};
  const row = tally[id];
  row[verdict] = (row[verdict] ?? 0) + 1;
}
