import { plain } from '../quantity/amount.ts';
import type { Findings } from './findings.ts';
import type { ImpactFields } from './impact-fields.ts';

type Rule = (fields: ImpactFields, findings: Findings) => void;

/** What no single field can tell: whether the fields of an impact protocol fit one another. */
export function checkImpactRules(fields: ImpactFields, findings: Findings): void {
  for (const rule of [
    heightsFitMethod,
    limitsAreOrdered,
    heightsAreWithinLimits,
    levelsRise,
    stopFits,
    sitesFit,
  ]) {
    rule(fields, findings);
  }
}

const heightsFitMethod: Rule = ({ method }, findings) => {
  if (method === undefined) return;
  const isFixed = method === 'fixed-level';
  const foreign = isFixed ? ['start', 'step'] : ['levels', 'perLevel'];
  for (const key of foreign.filter((name) => findings.valueAt([name]) !== undefined)) {
    const owner = isFixed ? 'up-and-down and rising-height' : 'fixed-level';
    const message = `found "${key}" with method ${method}, expected it with ${owner} only; remove it or change the method`;
    findings.add([key], 'key-not-of-method', message, 'key');
  }
  const needed = isFixed
    ? { levels: '[400 mm, 450 mm]' }
    : { start: 'a height such as "500 mm"', step: '"25 mm", or a ratio such as "5 %"' };
  for (const [key, example] of Object.entries(needed)) {
    if (findings.valueAt([key]) !== undefined) continue;
    const message = `the key "${key}" is missing, which method ${method} needs; add it: ${example}`;
    findings.add(['method'], 'missing-key', message);
  }
};

const limitsAreOrdered: Rule = ({ limits }, findings) => {
  if (limits?.min === undefined || limits.max === undefined || limits.min < limits.max) return;
  const message = `found ${plain(limits.max)} mm, expected more than "min", ${plain(limits.min)} mm; correct one of them`;
  findings.add(['limits', 'max'], 'limits-not-ordered', message);
};

const heightsAreWithinLimits: Rule = ({ start, levels, limits }, findings) => {
  const check = (height: number, path: (string | number)[]): void => {
    const isLow = limits?.min !== undefined && height < limits.min;
    const isHigh = limits?.max !== undefined && height > limits.max;
    if (!isLow && !isHigh) return;
    const bound = isLow
      ? `at least "limits.min", ${plain(limits.min!)} mm`
      : `at most "limits.max", ${plain(limits!.max!)} mm`;
    findings.add(path, 'beyond-limits', `found ${plain(height)} mm, expected ${bound}; correct one of them`);
  };
  if (start !== undefined) check(start, ['start']);
  for (const [i, level] of (levels ?? []).entries()) check(level, ['levels', i]);
};

const levelsRise: Rule = ({ levels = [] }, findings) => {
  for (const [i, level] of levels.entries()) {
    const before = levels[i - 1];
    if (before === undefined || level > before) continue;
    const found = `found ${plain(level)} mm after ${plain(before)} mm`;
    const message =
      level === before
        ? `${found}, expected each level once; remove one`
        : `${found}, expected the levels in rising order; sort them`;
    findings.add(['levels', i], 'levels-not-rising', message);
  }
};

const stopFits: Rule = ({ stop, method }, findings) => {
  if (!stop) return;
  const { drops, rarer, atMost, reversals } = stop;
  if (Object.values(stop).every((count) => count === undefined)) {
    findings.add(
      ['stop'],
      'missing-key',
      'found an empty "stop", expected a count such as { drops: 30 }; add one',
    );
  }
  if (rarer !== undefined && drops === undefined) {
    const message = 'found "rarer" without "drops", expected the drops that it prolongs; add "drops"';
    findings.add(['stop', 'rarer'], 'missing-key', message, 'key');
  }
  if (atMost !== undefined && rarer === undefined) {
    const message =
      'found "atMost" without "rarer", expected it with "rarer" only; write "drops" for a fixed number';
    findings.add(['stop', 'atMost'], 'missing-key', message, 'key');
  }
  if (atMost !== undefined && drops !== undefined && atMost < drops) {
    const message = `found ${atMost}, expected at least "drops", ${drops}; correct one of them`;
    findings.add(['stop', 'atMost'], 'stop-not-ordered', message);
  }
  if (reversals !== undefined && method !== undefined && method !== 'up-and-down') {
    const message = `found "reversals" with method ${method}, expected it with up-and-down only; use "drops" or "specimens"`;
    findings.add(['stop', 'reversals'], 'key-not-of-method', message, 'key');
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
