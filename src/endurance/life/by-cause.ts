import type { EnduranceEstimate } from '../../result/endurance.ts';
import type { LawName } from '../../statistics/law.ts';
import { observationsOfCause } from '../../statistics/life/competing-causes.ts';
import { estimatesOfLife, type LifeBasis } from './life-estimates.ts';
import { fitLife } from './life-fit.ts';
import type { TyreLife } from './lives.ts';

/** Fewer failures by one cause than this say nothing of its law. */
const FEWEST = 3;

/**
 * Where tyres failed by more than one cause, the law of each: what failed by another cause is a suspension. It holds where
 * causes strike independently, which the data cannot show.
 */
export function estimatesByCause(basis: LifeBasis, distribution: LawName): EnduranceEstimate[] {
  const failures = basis.lives.filter(({ failed }) => failed);
  const causes = [...new Set(failures.map(({ cause }) => cause ?? NO_CAUSE))].sort();
  if (causes.length < 2) return [];
  return causes.flatMap((cause) => {
    const own = failures.filter((life) => (life.cause ?? NO_CAUSE) === cause).length;
    if (own < FEWEST) return [];
    const caused = basis.lives.map((life) => ({
      lower: life.lower,
      upper: life.upper,
      cause: life.failed ? (life.cause ?? NO_CAUSE) : null,
    }));
    const observations = observationsOfCause(caused, cause);
    const lives = basis.lives.map(
      (life, i): TyreLife => ({
        ...life,
        ...observations[i]!,
        failed: Number.isFinite(observations[i]!.upper),
      }),
    );
    const entries = estimatesOfLife(fitLife(lives, distribution), {
      ...basis,
      lives,
      shares: [],
      distances: basis.distances,
    });
    return entries
      .filter(({ method }) => method === 'censored-likelihood')
      .map((entry) => ({ ...entry, variant: `cause: ${cause}` }));
  });
}

const NO_CAUSE = 'cause not noted';
