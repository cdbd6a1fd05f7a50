import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import { optional } from './blocks.ts';
import { count, flag, measure, name, pin, prose, share, word } from './fields.ts';
import type { Findings } from './findings.ts';
import type { Criterion } from './kinds.ts';
import { guardOf, limitOf } from './limits.ts';
import { once } from './once.ts';
import { type JudgedQuantity, QUANTITIES } from './quantities.ts';
import { type Fields, readEach } from './read-fields.ts';

const METHODS = ['censored-likelihood', 'specimen-effect'] as const;
const RULES = ['lower-bound', 'simple-acceptance', 'guard-band'] as const;

/** How a criterion is decided: for the whole specification, or for one criterion. */
export const decisionShape = once(() => ({
  rule: optional(
    word(
      RULES,
      'lower-bound: the one-sided bound must meet the limit (mirrored for atMost). simple-acceptance: the estimate alone. guard-band: the estimate must meet the limit moved inwards.',
    ),
  ),
  confidence: optional(share('Confidence of the one-sided bounds, such as 95 %.', 0.5, 1)),
  guard: optional(
    name('Width of the guard band, in a unit of the limit; without it, z times the standard error.'),
  ),
}));

/** What the specimen effect gives with bounds. */
const OF_ONE_HIT: ReadonlySet<string> = new Set([
  'medianFailureEnergy',
  'failureEnergyQuantile',
  'medianFailureHeight',
  'medianFailureMass',
]);

/** The keys of one criterion. */
export const criterionShape = once(() => ({
  id: name('Name of the criterion, once in the specification.'),
  title: optional(prose('What it asks, for people.')),
  protocol: optional(pin('Protocol that gives the evidence, as id@version.')),
  quantity: optional(name(`What is judged: ${[...QUANTITIES.keys()].join(', ')}.`)),
  probability: optional(share('Share failed, of a quantile: 10 % is the energy that fails one tyre in ten.')),
  at: optional(measure('km', 'Distance at which the reliability is asked.', { above: 0 })),
  atLeast: optional(name('Lower limit, with its unit.')),
  atMost: optional(name('Upper limit, with its unit.')),
  within: optional(name('Nominal value with its tolerance, such as 900 g ± 5 %.')),
  ...decisionShape(),
  method: optional(
    word(
      METHODS,
      'Estimate that is judged. censored-likelihood, the headline; specimen-effect: one hit on a fresh tyre, where tyres are hit more than once (drop tests: a median or a quantile).',
    ),
  ),
  minSpecimens: optional(count('Fewest specimens with which it may pass.')),
  each: optional(flag('Whether every measured specimen must meet it.')),
  external: optional(name('Who shows it where the lab does not, such as accredited.')),
  safety: optional(flag("Whether a rider's safety hangs on it: then only the safety role may waive it.")),
}));

type CriterionFields = Fields<ReturnType<typeof criterionShape>>;
type Decision = Fields<ReturnType<typeof decisionShape>>;

/** The criteria of a specification, and in words what they leave out. Problems go to `findings`. */
export function criteriaOf(
  decision: Decision,
  findings: Findings,
): { readonly criteria: readonly Criterion[]; readonly defaults: readonly string[] } {
  const all = readEach(criterionShape(), ['criteria'], findings);
  const said = new Set<string>();
  const seen = new Set<string>();
  const criteria = all.map(({ path, fields }) => {
    if (fields.id !== undefined && seen.has(fields.id)) {
      const message = `found the criterion ${quote(fields.id)} twice, expected ids that differ; rename one`;
      findings.add([...path, 'id'], 'duplicate-id', message);
    }
    if (fields.id !== undefined) seen.add(fields.id);
    return criterionOf(fields, decision, path, findings, said);
  });
  if (decision.guard !== undefined && !criteria.some(({ rule }) => rule === 'guard-band')) {
    const message = 'found "guard", which no criterion uses; expected it with rule guard-band; remove it';
    findings.add(['decision', 'guard'], 'key-not-of-rule', message, 'key');
  }
  return { criteria, defaults: [...said] };
}

function criterionOf(
  fields: CriterionFields,
  decision: Decision,
  path: readonly (string | number)[],
  findings: Findings,
  said: Set<string>,
): Criterion {
  const known = quantityOf(fields, path, findings);
  if (known) checkKeys(fields, known, path, findings);
  const rule = fields.rule ?? decision.rule ?? 'lower-bound';
  if ((fields.rule ?? decision.rule) === undefined) said.add('decision: lower-bound, by one-sided bounds');
  if ((fields.confidence ?? decision.confidence) === undefined)
    said.add('confidence: 95 %, one-sided bounds');
  if (known?.from === 'measured' && fields.each === undefined) {
    said.add(`criterion ${quote(fields.id ?? '')}: each measured specimen`);
  }
  if (fields.protocol?.version === null) {
    said.add(`criterion ${quote(fields.id ?? '')}: any version of protocol ${quote(fields.protocol.id)}`);
  }
  const limit = limitOf(fields, known, path, findings);
  return {
    id: fields.id ?? '',
    protocol: fields.protocol ?? null,
    quantity: fields.quantity ?? '',
    probability: fields.probability ?? null,
    at: fields.at ?? null,
    limit,
    rule,
    confidence: fields.confidence ?? decision.confidence ?? 0.95,
    guard: guardOf(fields, { rule, standard: decision.guard, unit: limit.unit, known }, path, findings),
    minSpecimens: fields.minSpecimens ?? null,
    method: fields.method ?? 'censored-likelihood',
    each: fields.each ?? known?.from === 'measured',
    external: fields.external ?? null,
    safety: fields.safety ?? false,
  };
}

/** What is judged; null where that is unknown and was reported, or is for an outside house to know. */
function quantityOf(
  { quantity, external }: CriterionFields,
  path: readonly (string | number)[],
  findings: Findings,
): JudgedQuantity | null {
  if (quantity === undefined) {
    if (external !== undefined || findings.valueAt([...path, 'quantity']) !== undefined) return null;
    const message = 'the key "quantity" is missing; add it: what is judged, such as medianFailureEnergy';
    findings.add(path, 'missing-key', message);
    return null;
  }
  const known = QUANTITIES.get(quantity) ?? null;
  if (!known && external === undefined) {
    const names = [...QUANTITIES.keys()];
    const help = didYouMean(quantity, names) || `; expected one of ${names.join(', ')}`;
    findings.add(
      [...path, 'quantity'],
      'unknown-quantity',
      `found the unknown quantity ${quote(quantity)}${help}`,
    );
  }
  return known;
}

function checkKeys(
  { quantity, each, external, method }: CriterionFields,
  { needs, from }: JudgedQuantity,
  path: readonly (string | number)[],
  findings: Findings,
): void {
  const has = (key: string): boolean => findings.valueAt([...path, key]) !== undefined;
  const examples = { probability: 'the share failed, such as 10 %', at: 'a distance such as 5000 km' };
  for (const key of ['probability', 'at'] as const) {
    if (key === needs && !has(key) && external === undefined) {
      const message = `the key "${key}" is missing, which ${quantity} needs; add it: ${examples[key]}`;
      findings.add([...path, 'quantity'], 'missing-key', message);
    }
    if (key !== needs && has(key)) {
      const message = `found "${key}" with ${quantity}, which has no such point; remove it`;
      findings.add([...path, key], 'key-not-of-quantity', message, 'key');
    }
  }
  if (from !== 'measured' && !has('protocol') && external === undefined) {
    const message = `the key "protocol" is missing, on which ${quantity} rests; add it as id@version`;
    findings.add([...path, 'quantity'], 'missing-key', message);
  }
  if (method === 'specimen-effect' && !OF_ONE_HIT.has(quantity ?? '')) {
    const message = `found "method: specimen-effect" with ${quantity}, expected it with ${[...OF_ONE_HIT].join(', ')} only; remove it`;
    findings.add([...path, 'method'], 'key-not-of-quantity', message, 'key');
  }
  if (from === 'measured' && has('protocol')) {
    const message = `found "protocol" with ${quantity}, which is measured on the specimens; remove it`;
    findings.add([...path, 'protocol'], 'key-not-of-quantity', message, 'key');
  }
  if (each !== undefined && each !== (from === 'measured')) {
    const why = from === 'measured' ? 'is judged tyre by tyre' : 'is one estimate for all tyres';
    findings.add(
      [...path, 'each'],
      'key-not-of-quantity',
      `found "each: ${each}" with ${quantity}, which ${why}; remove it`,
    );
  }
}
