import { quote } from '../problem/echo.ts';
import type { Problem } from '../problem/problem.ts';
import { readNumber, readQuantity } from '../quantity/quantity.ts';
import { dimensionOf } from '../quantity/units.ts';
import type { Construction } from './kinds.ts';
import type { Path } from './yaml-value.ts';

/** What physics says about a construction. */
export interface Doubts {
  /** No tyre can be so. */
  readonly impossible: readonly Problem[];
  /** Hardly any tyre is so: a slip of the pen, or worth a look. */
  readonly unusual: readonly Problem[];
}

interface Plausibility {
  /** Dotted paths of the factor. */
  readonly factors: readonly string[];
  /** Null for a pure number. */
  readonly unit: string | null;
  /** Beyond these no tyre can be. */
  readonly possible: readonly [least: number, most: number];
  /** Beyond these hardly any is. Common practice, no source. */
  readonly usual: readonly [least: number, most: number];
}

const RULES: readonly Plausibility[] = [
  { factors: ['mass'], unit: 'g', possible: [10, 20_000], usual: [150, 2500] },
  { factors: ['width'], unit: 'mm', possible: [5, 300], usual: [18, 130] },
  { factors: ['casing.tpi', 'tpi'], unit: null, possible: [1, 2000], usual: [15, 400] },
  { factors: ['casing.plies', 'plies'], unit: null, possible: [1, 50], usual: [1, 6] },
  { factors: ['pressure.max', 'maxPressure'], unit: 'bar', possible: [0.1, 50], usual: [0.8, 15] },
  { factors: ['pressure.min', 'minPressure'], unit: 'bar', possible: [0.05, 50], usual: [0.5, 12] },
];

/** Bar: what a straight-side rim without hooks may carry. ETRTO, as the trade press reports it; from memory. */
const HOOKLESS_LIMIT = 5;

/**
 * Bead seat diameters in mm of bicycle tyres as ISO 5775-1 and the trade's tables list them; from memory, for which
 * reason another one is only a doubt.
 */
const DIAMETERS: ReadonlySet<number> = new Set([
  203, 239, 254, 288, 298, 305, 317, 320, 330, 335, 337, 340, 349, 355, 357, 369, 380, 381, 387, 390, 400,
  406, 419, 428, 432, 438, 440, 451, 457, 484, 489, 490, 498, 501, 507, 520, 531, 534, 540, 541, 547, 559,
  565, 571, 584, 590, 597, 599, 609, 622, 630, 635, 642, 686, 700, 787,
]);

/** Holds the factors that tyres commonly have against what a tyre can be; factors of other names are the lab's own. */
export function doubtsOf({ factors, size, source }: Construction): Doubts {
  const impossible: Problem[] = [];
  const unusual: Problem[] = [];
  const say = (into: Problem[], path: Path, message: string) =>
    into.push({ file: source.path, ...source.locate(path), code: 'implausible', message });
  const read = new Map<string, number>();
  for (const { factors: names, unit, possible, usual } of RULES) {
    for (const name of names) {
      const text = factors[name];
      if (text === undefined) continue;
      const at = ['factors', ...name.split('.')];
      const value = unit === null ? readNumber(text) : readAs(text, unit);
      if (typeof value === 'number') {
        read.set(names[0]!, value);
        const [least, most] = value < possible[0] || value > possible[1] ? possible : usual;
        if (value >= least && value <= most) continue;
        const into = least === possible[0] && most === possible[1] ? impossible : unusual;
        const range = `${least} to ${most}${unit === null ? '' : ` ${unit}`}`;
        const expected = into === impossible ? `a tyre can have ${range}` : `tyres have ${range} as a rule`;
        say(into, at, `found ${name} ${quote(text)}, and ${expected}; correct it, or see that it is meant`);
      } else if (value !== null) say(value.isOther ? impossible : unusual, at, `${name}: ${value.why}`);
    }
  }
  const max = read.get('pressure.max');
  const min = read.get('pressure.min');
  if (max !== undefined && min !== undefined && min > max) {
    say(
      impossible,
      pathOf(factors, 'pressure.min', 'minPressure'),
      `found a least pressure of ${min} bar above the greatest, ${max} bar; correct one of them`,
    );
  }
  const edge = Object.entries(factors).find(
    ([name, value]) => /(^|\.)rim/u.test(name) && value === 'hookless',
  );
  if (max !== undefined && max > HOOKLESS_LIMIT && edge !== undefined) {
    const found = `found a greatest pressure of ${max} bar for a rim without hooks, which carries ${HOOKLESS_LIMIT} bar`;
    say(impossible, pathOf(factors, 'pressure.max', 'maxPressure'), `${found}; correct one of them`);
  }
  const [, section, seat] = /^(\d{2,3})-(\d{3})$/u.exec(size ?? '') ?? [];
  if (seat !== undefined && !DIAMETERS.has(Number(seat))) {
    say(
      unusual,
      ['size'],
      `found the bead seat diameter ${seat} mm in ${quote(size!)}, which is none of the usual; see that it is meant`,
    );
  }
  const width = read.get('width');
  if (section !== undefined && width !== undefined && Math.abs(width / Number(section) - 1) > 0.25) {
    say(
      unusual,
      ['factors', 'width'],
      `found a width of ${width} mm and the designation ${quote(size!)}; see which of them is meant`,
    );
  }
  return { impossible, unusual };
}

/** The value in a unit; null for words of the lab such as "light"; else why it cannot be had. */
function readAs(
  text: string,
  unit: string,
): number | null | { readonly isOther: boolean; readonly why: string } {
  const reading = readQuantity(text, unit);
  if (reading.ok) return reading.value.value;
  const given = /^[+-]?[\d.]+\s*(\S.*)$/u.exec(text.trim())?.[1];
  if (given === undefined && !/^[+-]?[\d.]/u.test(text.trim())) return null;
  const dimension = given === undefined ? null : dimensionOf(given);
  return { isOther: dimension !== null && dimension !== dimensionOf(unit), why: reading.why };
}

function pathOf(factors: Construction['factors'], ...names: readonly string[]): Path {
  return ['factors', ...(names.find((name) => name in factors) ?? names[0]!).split('.')];
}
