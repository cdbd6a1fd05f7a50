import type { Rule } from './impact-rule.ts';

/** Whether what a regression names is there once, and what it adjusts to is planned. */
export const regressionFits: Rule = ({ regression, pressure, temperature }, findings) => {
  if (!regression) return;
  const { covariates, interactions = [], adjust = [] } = regression;
  const at = (...path: (string | number)[]) => ['regression', ...path];
  for (const [i, name] of covariates.entries()) {
    if (covariates.indexOf(name) === i) continue;
    findings.add(
      at('covariates', i),
      'duplicate',
      `found "${name}" a second time, expected it once; remove one`,
    );
  }
  for (const [i, pair] of interactions.entries()) {
    const missing = pair.find((name) => !covariates.includes(name));
    if (pair.length === 2 && pair[0] !== pair[1] && missing === undefined) continue;
    const what = missing === undefined ? pair.join(', ') : `"${missing}"`;
    const message = `found ${what}, expected two different names of "covariates"; correct one of them`;
    findings.add(at('interactions', i), 'bad-interaction', message);
  }
  for (const [i, name] of adjust.entries()) {
    if (!covariates.includes(name)) {
      const message = `found "${name}", which is not among "covariates"; add it there`;
      findings.add(at('adjust', i), 'missing-key', message);
    }
    if ((name === 'pressure' ? pressure : temperature) !== undefined) continue;
    const message = `found "${name}", which this protocol does not state; add "${name}" to the protocol, or remove it here`;
    findings.add(at('adjust', i), 'missing-key', message);
  }
};
