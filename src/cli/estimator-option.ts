import { InvalidArgumentError } from 'commander';
import { ESTIMATOR_NAMES, type EstimatorName } from '../documents/estimator-names.ts';
import { didYouMean } from '../problem/suggest.ts';

/** Names of estimators, separated by commas; `all` for every one. */
export function estimatorNames(text: string): readonly EstimatorName[] {
  if (text.trim() === 'all') return ESTIMATOR_NAMES;
  return text.split(',').map((part) => {
    const name = ESTIMATOR_NAMES.find((known) => known === part.trim());
    if (name !== undefined) return name;
    const near = didYouMean(part.trim(), ESTIMATOR_NAMES);
    throw new InvalidArgumentError(`Expected all, or some of ${ESTIMATOR_NAMES.join(', ')}${near}.`);
  });
}
