import { levelLimits } from '../impact/rules/method-rules.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { height, kilograms } from '../quantity/format.ts';
import { type Reading, readQuantity } from '../quantity/quantity.ts';
import type { AssumedStrength } from '../simulation/strength.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { type DesignedTest, isHitOnce } from './design-of.ts';

/** What a person says of the tyres, as written on the command line. */
export interface StatedStrength {
  /** J, or a height. */
  readonly median: string | null;
  /** `35 J..60 J/20`: from, to, how many. */
  readonly medians: string | null;
  readonly spread: string | null;
  readonly law: LawName | null;
  readonly between: string | null;
  readonly damage: string | null;
  readonly anyOffset: boolean;
}

/** The same as numbers; one entry for each true median, in rising order as asked. */
export interface StrengthsRead {
  readonly assumed: readonly AssumedStrength[];
  readonly spreadUnit: string;
  readonly defaults: readonly string[];
}

/** Most medians of one run. */
const MOST_POINTS = 1000;

/**
 * Reads what is assumed of the tyres.
 *
 * @throws InputError with everything that is wrong, each under its flag
 */
export function readStrengths(stated: StatedStrength, design: DesignedTest): StrengthsRead {
  const problems: Problem[] = [];
  const { protocol } = design;
  const law = stated.law ?? protocol.distribution;
  const wrong = (flag: string, message: string) =>
    problems.push({ file: flag, line: null, column: null, code: 'assumption', message });
  const take = <Value>(flag: string, reading: Reading<Value>): Value | null => {
    if (!reading.ok) wrong(flag, reading.why);
    return reading.ok ? reading.value : null;
  };
  const medians = mediansOf(stated, design, take, wrong);
  const isLog = laws[law].scale === 'log';
  const spread =
    stated.spread === null ? null : take('--spread', spreadOf(stated.spread, isLog, design, medians));
  if (stated.spread === null)
    wrong(
      '--spread',
      `is missing; state the spread of the tyres, such as --spread "${isLog ? '9 %' : '4 J'}"`,
    );
  else if (spread !== null && !(spread > 0))
    wrong('--spread', `found "${stated.spread}", expected more than nought`);
  const share = (flag: string, text: string | null, most: string) => {
    if (text === null) return null;
    const value = take(flag, readQuantity(text, '1'))?.value ?? null;
    const isShare = value === null || (value >= 0 && (most === '100 %' ? value <= 1 : value < 1));
    if (!isShare) wrong(flag, `found "${text}", expected a share from 0 % to ${most}`);
    return value;
  };
  const between = share('--between', stated.between, '100 %');
  const damage = share('--damage', stated.damage, 'below 100 %');
  for (const median of medians) checkReach(median, design, wrong);
  if (problems.length > 0) throw new InputError(problems);
  const usual = usualBetween(design);
  return {
    assumed: medians.map((median) => ({
      law,
      median,
      spread: spread!,
      between: between ?? usual.share,
      damage: damage ?? 0,
      anyOffset: stated.anyOffset,
    })),
    spreadUnit: isLog ? '1' : 'J',
    defaults: [
      ...(stated.law === null ? [`law: ${law}, the protocol's`] : []),
      ...(between === null && usual.why !== null ? [usual.why] : []),
      ...(damage === null && !isHitOnce(protocol) ? ['damage: none by earlier hits'] : []),
    ],
  };
}

function usualBetween({ protocol }: DesignedTest): { share: number; why: string | null } {
  if (isHitOnce(protocol)) return { share: 0, why: null };
  if (protocol.method === 'rising-height') {
    return { share: 1, why: 'between: 100 %, each tyre has one fixed strength' };
  }
  return { share: 0.5, why: 'between: 50 % of the variance lies between tyres (common practice, no source)' };
}

type Take = <Value>(flag: string, reading: Reading<Value>) => Value | null;
type Wrong = (flag: string, message: string) => void;

function mediansOf(
  { median, medians }: StatedStrength,
  design: DesignedTest,
  take: Take,
  wrong: Wrong,
): number[] {
  const one = median === null ? null : take('--median', energyOf(median, design));
  if (medians === null) {
    if (median === null)
      wrong(
        '--median',
        'is missing; state the true median, such as --median "45 J", or --medians "35 J..60 J/20"',
      );
    return positive(one === null ? [] : [one], '--median', median, wrong);
  }
  const [, first, last, points] = /^(.+?)\.\.(.+?)\/(\d+)$/u.exec(medians.trim()) ?? [];
  if (first === undefined || last === undefined) {
    wrong('--medians', `found "${medians}", expected from, to and how many, such as "35 J..60 J/20"`);
    return [];
  }
  const from = take('--medians', energyOf(first.trim(), design));
  const to = take('--medians', energyOf(last.trim(), design));
  const count = Number(points);
  if (from === null || to === null) return [];
  if (count < 2 || count > MOST_POINTS || !(from < to)) {
    wrong(
      '--medians',
      `found "${medians}", expected a lower end, a higher one, and 2 to ${MOST_POINTS} medians`,
    );
    return [];
  }
  const all = Array.from({ length: count }, (_, i) =>
    Number((from + ((to - from) * i) / (count - 1)).toPrecision(12)),
  );
  return positive(one === null ? all : [...all, one].sort((a, b) => a - b), '--medians', medians, wrong);
}

function positive(medians: number[], flag: string, text: string | null, wrong: Wrong): number[] {
  if (medians.every((value) => value > 0)) return medians;
  wrong(flag, `found "${text}", expected more than nought`);
  return [];
}

/** An energy, or the energy of a height (a mass, where the protocol varies the mass). */
export function energyOf(text: string, { energyPerLevel, protocol }: DesignedTest): Reading<number> {
  const energy = readQuantity(text, 'J');
  if (energy.ok) return { ok: true, value: energy.value.value };
  const level = readQuantity(text, protocol.vary === 'mass' ? 'kg' : 'mm');
  return level.ok ? { ok: true, value: level.value.value * energyPerLevel } : energy;
}

function spreadOf(
  text: string,
  isLog: boolean,
  design: DesignedTest,
  medians: readonly number[],
): Reading<number> {
  const asShare = readQuantity(text, '1');
  if (isLog) {
    if (asShare.ok) return { ok: true, value: asShare.value.value };
    return {
      ok: false,
      why: `found "${text}", expected the spread of ln E as a share, such as "9 %", for this law`,
    };
  }
  if (!asShare.ok) return energyOf(text, design);
  const [median, ...others] = medians;
  if (median === undefined || others.length > 0) {
    return { ok: false, why: `found "${text}", expected joules or a height: a share is of one median` };
  }
  return { ok: true, value: asShare.value.value * median };
}

function checkReach(median: number, { protocol, rig, energyPerLevel }: DesignedTest, wrong: Wrong): void {
  const { min, max } = levelLimits(protocol, rig);
  const level = median / energyPerLevel;
  const say = protocol.vary === 'mass' ? kilograms : height;
  if ((max === null || level <= max) && (min === null || level >= min)) return;
  const range = [min === null ? null : `from ${say(min)}`, max === null ? null : `up to ${say(max)}`];
  const reach = range.filter((part) => part !== null).join(' ');
  wrong(
    '--median',
    `found ${Number(median.toPrecision(4))} J, which is ${say(level)}, expected a median that the rig reaches (${reach})`,
  );
}
