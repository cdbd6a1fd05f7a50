import type { ListedDeviation } from '../conformance/deviation.ts';
import type { ImpactResult } from '../result/analysis.ts';
import type { JudgedCriterion } from '../result/criterion.ts';
import type { Estimate } from '../result/estimate.ts';
import { jsonText } from './json-text.ts';

/**
 * The document of `analyze --json` (CONTRACT: the JSON of analyze): every number at full precision, keys in a fixed
 * order, no number that is not finite, a newline at the end. Keys may be added; a change of meaning makes it `/2`.
 *
 * @param version of tirelab itself.
 */
export function analysisDocument(result: ImpactResult, version: string): string {
  return jsonText({
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
    defaults: result.defaults,
    notes: result.notes,
    conformance: {
      status: result.conformance.status,
      why: result.conformance.why,
      excluded: result.conformance.excluded,
      deviations: result.conformance.deviations.map(deviationEntry),
    },
    sample: result.sample,
    ...(result.samples.length > 0 ? { samples: result.samples } : {}),
    ...(result.amendments.length > 0 ? { amendments: result.amendments } : {}),
    ...(result.replaces ? { replaces: result.replaces } : {}),
    ...(result.provisional.length > 0 ? { provisional: result.provisional } : {}),
    estimates: result.estimates.map(estimateEntry),
    goodness: result.goodness,
    regression: result.regression,
    criteria: result.criteria.map(criterionEntry),
    verdict: result.verdict,
    path: result.path,
  });
}

function deviationEntry(deviation: ListedDeviation) {
  const { code, severity, scope, message, file, line, specimen, drop, count, firstLine, lastLine } =
    deviation;
  return { code, severity, scope, message, file, line, specimen, drop, count, firstLine, lastLine };
}

function estimateEntry(estimate: Estimate) {
  const {
    quantity,
    sample,
    construction,
    probability,
    variant,
    method,
    distribution,
    unit,
    value,
    standardError,
  } = estimate;
  const { interval, specimens, drops, why } = estimate;
  return {
    quantity,
    sample,
    construction,
    probability,
    variant,
    method,
    distribution,
    unit,
    value,
    standardError,
    interval,
    specimens,
    drops,
    why,
  };
}

function criterionEntry(criterion: JudgedCriterion) {
  const {
    id,
    sample,
    construction,
    quantity,
    probability,
    at,
    limit,
    rule,
    confidence,
    estimate,
    bounds,
    basis,
  } = criterion;
  const { verdict, why, counted, more, measured } = criterion;
  return {
    id,
    sample,
    construction,
    quantity,
    probability,
    at,
    limit,
    rule,
    confidence,
    estimate,
    bounds,
    basis,
    verdict,
    why,
    counted,
    more,
    measured,
  };
}
