/** Why a regression has no estimate. Columns are named as in the design (`construction B`, `pressure`). */
export type RegressionRefusal =
  | { readonly kind: 'empty' }
  /** A covariate that has one value only: no effect can be told. */
  | { readonly kind: 'constant'; readonly covariate: string }
  /** A column that others determine: their effects cannot be told apart. */
  | { readonly kind: 'aliased'; readonly column: string; readonly with: readonly string[] }
  /** The level of the test itself is determined by the covariates, so neither spread nor location can be told. */
  | { readonly kind: 'level-aliased'; readonly with: readonly string[] }
  /** A change of these columns' effects fits ever better without end; `spread`: the spread runs to 0 with it. */
  | { readonly kind: 'separated'; readonly columns: readonly string[]; readonly spread: boolean }
  /** With the covariates allowed for, failures are on average no higher than survivals. */
  | { readonly kind: 'wrong-direction' }
  /** The refusal of one group that has a spread of its own. */
  | { readonly kind: 'group'; readonly group: string; readonly refusal: RegressionRefusal };

/** The refusal as a sentence that says what settles it. */
export function explainRefusal(refusal: RegressionRefusal): string {
  switch (refusal.kind) {
    case 'empty':
      return 'there are no observations';
    case 'constant':
      return `${refusal.covariate} has the same value throughout, so its effect cannot be told; leave it out or test at another value`;
    case 'aliased':
      return `${refusal.column} goes together with ${list(refusal.with)}, so their effects cannot be told apart; leave one out or test them apart`;
    case 'level-aliased':
      return `each level was tested under conditions of its own (${list(refusal.with)}), so their effects and the spread cannot be told apart; test at the same levels`;
    case 'separated':
      return refusal.spread
        ? `with ${list(refusal.columns)} allowed for, failures and survivals overlap at no more than one level, so the spread runs to 0; more drops near that level would settle it`
        : `the effect of ${list(refusal.columns)} has no finite value: what fails and what survives is told apart by it alone; drops at levels with both outcomes would settle it`;
    case 'wrong-direction':
      return 'with the covariates allowed for, failures lie on average no higher than survivals, so no spread fits best; check the outcomes or test further out';
    case 'group':
      return `${refusal.group}: ${explainRefusal(refusal.refusal)}`;
  }
}

function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? 'nothing else';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
