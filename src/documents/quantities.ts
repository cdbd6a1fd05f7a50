/** What a specification can set a limit to. */
export interface JudgedQuantity {
  /** Units of which the limit must have the dimension; the first is the usual one. */
  readonly units: readonly string[];
  /** Whether a limit may be a bare number: where `1` is a count of nothing, not a share. */
  readonly isPure?: true;
  /** Where the evidence comes from: an estimate of a test, or a measurement on every specimen. */
  readonly from: 'impact' | 'endurance' | 'measured';
  /** The further key that says which point is meant. */
  readonly needs?: 'probability' | 'at';
}

export const QUANTITIES: ReadonlyMap<string, JudgedQuantity> = new Map<string, JudgedQuantity>([
  ['medianFailureEnergy', { units: ['J'], from: 'impact' }],
  ['failureEnergyQuantile', { units: ['J'], from: 'impact', needs: 'probability' }],
  // In J for normal and logistic strength; of ln E, a pure number, for lognormal and Weibull.
  ['energySpread', { units: ['J', '1'], isPure: true, from: 'impact' }],
  ['medianFailureHeight', { units: ['mm'], from: 'impact' }],
  // Where the protocol varies the falling mass.
  ['medianFailureMass', { units: ['kg'], from: 'impact' }],
  ['characteristicLife', { units: ['km'], from: 'endurance' }],
  ['weibullShape', { units: ['1'], isPure: true, from: 'endurance' }],
  ['lifeQuantile', { units: ['km'], from: 'endurance', needs: 'probability' }],
  ['reliability', { units: ['1'], from: 'endurance', needs: 'at' }],
  ['wearRate', { units: ['mm/1000km'], from: 'endurance' }],
  ['mass', { units: ['g'], from: 'measured' }],
  ['width', { units: ['mm'], from: 'measured' }],
  ['pressureLoss', { units: ['bar'], from: 'measured' }],
]);
