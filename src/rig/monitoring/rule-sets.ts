import { nelsonRules, type RunRule, westernElectricRules } from '../../statistics/control-chart/run-rules.ts';

/** The published sets of run rules by the name that `--rules` gives them; the rule of one point beyond 3 sigma is the limits. */
export const RULE_SETS = {
  'western-electric': without(westernElectricRules, 'WE1'),
  nelson: without(nelsonRules, 'N1'),
  none: [],
} as const satisfies Readonly<Record<string, readonly (readonly [string, RunRule])[]>>;

export type RuleSet = keyof typeof RULE_SETS;

function without(rules: Readonly<Record<string, RunRule>>, limits: string): (readonly [string, RunRule])[] {
  return Object.entries(rules).filter(([name]) => name !== limits);
}
