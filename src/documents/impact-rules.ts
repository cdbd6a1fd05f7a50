import { plain } from '../quantity/amount.ts';
import type { Findings } from './findings.ts';
import type { ImpactFields } from './impact-fields.ts';
import { regressionFits } from './impact-regression-rules.ts';
import type { Rule } from './impact-rule.ts';
import { stopCanBeReached, stopFits } from './impact-stop-rules.ts';
import { exampleOf, METHOD_KEYS, methodsWith } from './method-keys.ts';

/** What no single field can tell: whether the fields of an impact protocol fit one another. */
export function checkImpactRules(fields: ImpactFields, findings: Findings): void {
  for (const rule of [
    keysFitMethod,
    massFits,
    limitsAreOrdered,
    limitsAreWhole,
    stepFitsLimits,
    guessFits,
    heightsAreWithinLimits,
    levelsRise,
    stopFits,
    stopCanBeReached,
    regressionFits,
    sitesFit,
  ]) {
    rule(fields, findings);
  }
}

const keysFitMethod: Rule = ({ method }, findings) => {
  if (method === undefined) return;
  const { needed, foreign } = METHOD_KEYS[method];
  for (const key of foreign.filter((name) => findings.valueAt([name]) !== undefined)) {
    const owners = methodsWith(key);
    const owner = owners.length > 1 ? `${owners.slice(0, -1).join(', ')} and ${owners.at(-1)}` : owners[0];
    const message = `found "${key}" with method ${method}, expected it with ${owner} only; remove it or change the method`;
    findings.add([key], 'key-not-of-method', message, 'key');
  }
  for (const key of needed) {
    if (findings.valueAt([key]) !== undefined) continue;
    const message = `the key "${key}" is missing, which method ${method} needs; add it: ${exampleOf(key)}`;
    findings.add(['method'], 'missing-key', message);
  }
};

const massFits: Rule = ({ vary, height, method, energy }, findings) => {
  if (vary !== 'mass') {
    if (height === undefined) return;
    const message =
      'found "height" without vary: mass, expected "start" or "levels" for heights; remove it or add vary: mass';
    findings.add(['height'], 'key-not-of-method', message, 'key');
    return;
  }
  if (findings.valueAt(['height']) === undefined) {
    const message =
      'the key "height" is missing, which vary: mass needs: all drops are made from it; add height: 500 mm';
    findings.add(['vary'], 'missing-key', message);
  }
  if (findings.valueAt(['mass']) !== undefined) {
    const message = 'found "mass" with vary: mass, where the levels are the masses; remove it';
    findings.add(['mass'], 'key-not-of-method', message, 'key');
  }
  if (method === 'rising-height' || (energy !== undefined && energy !== 'potential')) {
    const found = method === 'rising-height' ? 'method: rising-height' : `energy: ${energy}`;
    const expected = method === 'rising-height' ? 'a method of single drops' : 'energy: potential';
    findings.add(
      ['vary'],
      'key-not-of-method',
      `found vary: mass with ${found}, expected ${expected}; change one of them`,
    );
  }
};

/** The unit of what is varied. */
const unitOf = ({ vary }: ImpactFields) => (vary === 'mass' ? 'kg' : 'mm');

const limitsAreOrdered: Rule = (fields, findings) => {
  const { limits } = fields;
  const unit = unitOf(fields);
  if (limits?.min === undefined || limits.max === undefined || limits.min < limits.max) return;
  const message = `found ${plain(limits.max)} ${unit}, expected more than "min", ${plain(limits.min)} ${unit}; correct one of them`;
  findings.add(['limits', 'max'], 'limits-not-ordered', message);
};

/** Rules that choose levels between two ends need both. */
const limitsAreWhole: Rule = ({ method, limits }, findings) => {
  if (method === undefined || !METHOD_KEYS[method].needed.includes('limits') || limits === undefined) return;
  for (const end of ['min', 'max'] as const) {
    if (findings.valueAt(['limits', end]) !== undefined) continue;
    const message = `the key "${end}" is missing, which method ${method} needs: it sets levels between both limits; add it`;
    findings.add(['limits'], 'missing-key', message, 'key');
  }
};

/** A step that leaves the range from the start, upwards and (but for a rise) downwards, has one level: it finds nothing. */
const stepFitsLimits: Rule = (fields, findings) => {
  const { start, step, limits, method } = fields;
  if (start === undefined || step === undefined || limits === undefined) return;
  const { min = 0, max = Infinity } = limits;
  const [below, above] =
    step.kind === 'additive'
      ? [start - step.size, start + step.size]
      : [start / (1 + step.ratio), start * (1 + step.ratio)];
  const isRise = method === 'rising-height';
  if (!(start >= min && start <= max) || above <= max || (below >= min && !isRise)) return;
  const unit = unitOf(fields);
  const range = `${plain(min)} to ${plain(max)} ${unit}`;
  const ways = isRise ? 'upwards' : 'upwards and downwards';
  const message = `found a step that leaves the limits, ${range}, ${ways} from the start, ${plain(start)} ${unit}; expected a smaller step or wider limits`;
  findings.add(['step'], 'step-beyond-limits', message);
};

const guessFits: Rule = (fields, findings) => {
  const { guess, limits } = fields;
  if (guess === undefined) return;
  const unit = unitOf(fields);
  const { lowest, highest } = guess;
  if (!(lowest < highest)) {
    const message = `found ${plain(highest)} ${unit}, expected more than "lowest", ${plain(lowest)} ${unit}; correct one of them`;
    findings.add(['guess', 'highest'], 'limits-not-ordered', message);
  }
  for (const [key, value] of [
    ['lowest', lowest],
    ['highest', highest],
  ] as const) {
    const isIn = value >= (limits?.min ?? 0) && value <= (limits?.max ?? Infinity);
    if (isIn) continue;
    const message = `found ${plain(value)} ${unit}, expected a level within "limits"; correct one of them`;
    findings.add(['guess', key], 'beyond-limits', message);
  }
};

const heightsAreWithinLimits: Rule = (fields, findings) => {
  const { start, levels, limits } = fields;
  const unit = unitOf(fields);
  const check = (height: number, path: (string | number)[]): void => {
    const isLow = limits?.min !== undefined && height < limits.min;
    const isHigh = limits?.max !== undefined && height > limits.max;
    if (!isLow && !isHigh) return;
    const bound = isLow
      ? `at least "limits.min", ${plain(limits.min!)} ${unit}`
      : `at most "limits.max", ${plain(limits!.max!)} ${unit}`;
    findings.add(
      path,
      'beyond-limits',
      `found ${plain(height)} ${unit}, expected ${bound}; correct one of them`,
    );
  };
  if (start !== undefined) check(start, ['start']);
  for (const [i, level] of (levels ?? []).entries()) check(level, ['levels', i]);
};

const levelsRise: Rule = (fields, findings) => {
  const { levels = [] } = fields;
  const unit = unitOf(fields);
  for (const [i, level] of levels.entries()) {
    const before = levels[i - 1];
    if (before === undefined || level > before) continue;
    const found = `found ${plain(level)} ${unit} after ${plain(before)} ${unit}`;
    const message =
      level === before
        ? `${found}, expected each level once; remove one`
        : `${found}, expected the levels in rising order; sort them`;
    findings.add(['levels', i], 'levels-not-rising', message);
  }
};

const sitesFit: Rule = ({ sites, afterFailure }, findings) => {
  if (sites?.afterFailure !== undefined && afterFailure !== undefined) {
    const message = 'found "afterFailure" here and in "sites", expected it once; remove one';
    findings.add(['afterFailure'], 'duplicate-key', message, 'key');
  }
  const { perSpecimen, spacing, each } = sites ?? {};
  if (perSpecimen === undefined || spacing === undefined || each === 'same-spot') return;
  if (perSpecimen * spacing <= 360) return;
  const room = Math.floor(360 / spacing);
  const message = `found ${perSpecimen} sites ${plain(spacing)}° apart, expected at most ${room}, which go round a tyre; correct one of them`;
  findings.add(['sites', 'perSpecimen'], 'sites-do-not-fit', message);
};
