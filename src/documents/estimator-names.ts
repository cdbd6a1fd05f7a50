/** Estimators that are given on request, or beside the headline where a method has them by custom. */
export const ESTIMATOR_NAMES = [
  'mean-of-levels',
  'small-sample',
  'bias-corrected-spread',
  'tolerance-factor',
  'isotonic',
  'centred-isotonic',
  'spearman-karber',
  'nonparametric',
  'goodness-of-fit',
] as const;

export type EstimatorName = (typeof ESTIMATOR_NAMES)[number];
