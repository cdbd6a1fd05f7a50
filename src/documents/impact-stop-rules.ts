import { plain } from '../quantity/amount.ts';
import type { Rule } from './impact-rule.ts';
import type { ImpactMethod } from './kinds.ts';

/** Methods whose outcomes reverse a direction. */
const REVERSING: readonly ImpactMethod[] = ['up-and-down', 'transformed-up-and-down'];

/** Whether the counts of a stop rule fit one another and the method. */
export const stopFits: Rule = ({ stop, method }, findings) => {
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
  if (reversals !== undefined && method !== undefined && !REVERSING.includes(method)) {
    const message = `found "reversals" with method ${method}, expected it with up-and-down methods only; use "drops" or "specimens"`;
    findings.add(['stop', 'reversals'], 'key-not-of-method', message, 'key');
  }
};

/** A rule that cannot stop is found before the first drop, where its keys alone show it. */
export const stopCanBeReached: Rule = (fields, findings) => {
  const { stop, method, sites, levels, perLevel } = fields;
  if (!stop) return;
  const { drops, rarer, atMost, specimens } = stop;
  if (rarer !== undefined && atMost !== undefined && 2 * rarer > atMost) {
    const message = `found ${rarer}, expected at most half of "atMost", ${atMost}: the rarer outcome cannot be more often than that; correct one of them`;
    findings.add(['stop', 'rarer'], 'stop-out-of-reach', message);
  }
  const goesOn = (sites?.afterFailure ?? fields.afterFailure) === 'new-site';
  const isUnlimited = sites?.each === 'same-spot' || sites?.each === 'series-per-site';
  if (specimens !== undefined && method !== 'rising-height' && goesOn && isUnlimited) {
    const message =
      'found "specimens" where a specimen may be hit again without end (sites.each and afterFailure: new-site), so that none is ever finished; use "drops"';
    findings.add(['stop', 'specimens'], 'stop-out-of-reach', message, 'key');
  }
  if (method === 'fixed-level' && perLevel !== undefined && levels !== undefined && drops !== undefined) {
    const all = perLevel * levels.length;
    if (drops <= all && rarer === undefined) return;
    const message = `found "drops" ${plain(drops)}${rarer === undefined ? '' : ' with "rarer"'}, expected at most the ${all} drops of "levels" and "perLevel", which end the series; remove "stop"`;
    findings.add(['stop', 'drops'], 'stop-out-of-reach', message);
  }
};
