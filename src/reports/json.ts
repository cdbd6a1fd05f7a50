import type { ListedDeviation } from '../conformance/deviation.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { JudgedCriterion } from '../result/criterion.ts';
import type { Estimate } from '../result/estimate.ts';
import { type JsonRecord, jsonText } from './json-text.ts';

/**
 * The document of `analyze --json` (CONTRACT: the JSON of analyze): every number at full precision, keys in a fixed
 * order, no number that is not finite, a newline at the end. Keys may be added; a change of meaning makes it `/2`.
 *
 * @param version of tirelab itself.
 */
export function analysisDocument(result: ImpactResult, version: string): string {
  return jsonText(analysisRecord(result, version));
}

/** The same, not yet set as text. */
export function analysisRecord(result: ImpactResult, version: string): JsonRecord {
  return {
    schema: 'tirelab.result/1',
    kind: result.kind,
    tool: { name: 'tirelab', version },
    run: result.run,
    protocol: result.protocol,
    rig: result.rig,
    constructions: result.constructions,
    specification: result.specification,
    inputs: result.inputs.map(({ role, path, sha256, bytes, rows, import: imported }) => ({
      role,
      path,
      sha256,
      bytes,
      rows,
      ...(imported ? { import: imported } : {}),
    })),
    energy: result.energy,
    ...(result.massCorrections ? { massCorrections: result.massCorrections } : {}),
    ...(result.period ? { period: result.period } : {}),
    ...(result.intervals ? { intervals: result.intervals } : {}),
    defaults: result.defaults,
    notes: result.notes,
    conformance: {
      status: result.conformance.status,
      why: result.conformance.why,
      excluded: result.conformance.excluded,
      deviations: result.conformance.deviations.map(inOrder(DEVIATION_KEYS)),
    },
    sample: result.sample,
    ...(result.samples.length > 0 ? { samples: result.samples } : {}),
    ...(result.amendments.length > 0 ? { amendments: result.amendments } : {}),
    ...(result.replaces ? { replaces: result.replaces } : {}),
    ...(result.retests ? { retests: result.retests } : {}),
    ...(result.provisional.length > 0 ? { provisional: result.provisional } : {}),
    estimates: result.estimates.map(inOrder(ESTIMATE_KEYS)),
    ...(result.uncertainty ? { uncertainty: result.uncertainty } : {}),
    goodness: result.goodness,
    regression: result.regression,
    criteria: result.criteria.map(inOrder(CRITERION_KEYS)),
    verdict: result.verdict,
    path: result.path,
  };
}

/** The keys of an entry in the order in which documents have them, whatever order the entry was made in. */
const DEVIATION_KEYS = [
  'code',
  'severity',
  'scope',
  'message',
  'file',
  'line',
  'specimen',
  'drop',
  'count',
  'firstLine',
  'lastLine',
] as const satisfies readonly (keyof ListedDeviation)[];

const ESTIMATE_KEYS = [
  'quantity',
  'sample',
  'construction',
  'probability',
  'variant',
  'method',
  'distribution',
  'unit',
  'value',
  'standardError',
  'interval',
  'specimens',
  'drops',
  'why',
] as const satisfies readonly (keyof Estimate)[];

const CRITERION_KEYS = [
  'id',
  'sample',
  'construction',
  'quantity',
  'probability',
  'at',
  'limit',
  'rule',
  'confidence',
  'estimate',
  'standardError',
  'specimens',
  'bounds',
  'basis',
  'verdict',
  'why',
  'counted',
  'more',
  'measured',
] as const satisfies readonly (keyof JudgedCriterion)[];

function inOrder<Entry>(keys: readonly (keyof Entry)[]): (entry: Entry) => Partial<Entry> {
  return (entry) => Object.fromEntries(keys.map((key) => [key, entry[key]])) as Partial<Entry>;
}
