import { test } from 'vitest';
import { laws } from '../../../src/statistics/laws/laws.ts';
import { gatherObservations } from '../../../src/statistics/likelihood/observation.ts';
import { emptyTerm, sumTerms } from '../../../src/statistics/likelihood/term.ts';
import { drops, expectCase, titleOf } from '../../reference/likelihood/case.ts';
import sen02 from '../../reference/sen-02/SEN-02-updown-drop-hammer-2019.json' with { type: 'json' };

// The published analysis is Bayesian too. tirelab has no such estimate; its likelihood under the published priors, summed
// over a grid, must give the published quantiles: the whole surface is held, not its top alone.
test(`${titleOf(sen02)}: the posterior of the median by the published priors`, () => {
  const sample = gatherObservations(drops(sen02.data.height.map(Math.log10), sen02.data.fail), 'identity');
  const term = emptyTerm();
  const medians = Array.from({ length: 1500 }, (_, i) => 0.5 + 0.0015 * i);
  const weights = medians.map((mu) => {
    let sum = 0;
    for (let log = -5; log <= 1.5; log += 0.04) {
      const b = Math.exp(-log);
      const { value } = sumTerms(sample, laws.normal.standard, mu, 0, b, term);
      sum += Math.exp(value - 0.5 * ((mu - 1.5) / 9.4) ** 2 - 0.5 * (log + 2.8) ** 2);
    }
    return sum;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const quantile = (p: number) => {
    let below = 0;
    const at = weights.findIndex((weight) => {
      below += weight;
      return below >= p * total;
    });
    return medians[at]!;
  };
  expectCase(
    sen02,
    'Bayes posterior of mu, prior mu~N(1.5,9.4^2), ln sigma~N(-2.8,1): 2.5%,50%,97.5%',
    [0.025, 0.5, 0.975].map(quantile),
  );
});
