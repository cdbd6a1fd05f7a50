import { likelihoodRatioCritical } from '../likelihood/critical.ts';
import { CRITICAL_TABLE } from './critical-table.ts';
import type { CriticalQuestion, CriticalValues } from './critical-values.ts';
import { TABLE_AXES } from './table-axes.ts';

/** An up-and-down test as the table has it: n drops from `start` in equal steps, one hit a specimen, normal strength. */
export interface TabulatedTest {
  readonly drops: number;
  /** Fitted scale. */
  readonly start: number;
  readonly step: number;
}

const { drops: DROPS, scales: SCALES, offsets: OFFSETS, shares, levels, tails } = TABLE_AXES;
const COLUMNS = shares.length * levels.length * tails.length;
const RANGE = 8;

let bytes: string | null = null;

/** A root of the table. Read byte by byte where it is wanted: unpacking all of them would cost more than an analysis uses. */
function rootAt(index: number): number {
  bytes ??= atob(CRITICAL_TABLE);
  return (bytes.charCodeAt(2 * index) + 256 * bytes.charCodeAt(2 * index + 1)) / 1000;
}

/** Whether the table answers questions of a test of so many drops at a share and level. */
export function isTabulated(drops: number, p: number, level: number): boolean {
  return drops >= DROPS[0] && shares.includes(p as 0.5) && levels.includes(level as 0.9);
}

/**
 * Critical values from the table, linear in 1/n, ln scale and offset. Starts more than 8 steps off are moved to within 8
 * by whole steps, scales outside 1/3 to 6 steps to the nearest.
 */
export function tabulatedCriticals({ drops, start, step }: TabulatedTest): CriticalValues {
  return (question) => {
    const { y, strength } = question;
    const column = columnOf(question);
    const offset = (start - y) / step;
    const moved =
      Math.abs(offset) <= RANGE ? offset : Math.sign(offset) * (RANGE - 1 + (Math.abs(offset) % 1));
    const place = (Math.log((3 * strength.scale) / step) / Math.log(18)) * (SCALES.length - 1);
    const scale = Math.min(Math.max(place, 0), SCALES.length - 1);
    const above = DROPS.findIndex((n) => n >= drops);
    if (above === 0) return value(0, scale, moved, column);
    const high = above < 0 ? DROPS.length - 1 : above - 1;
    const left = 1 / DROPS[high]!;
    const right = above < 0 ? 0 : 1 / DROPS[above]!;
    const weight = (left - 1 / drops) / (left - right);
    const many =
      above < 0
        ? Math.sqrt(likelihoodRatioCritical(question.level, question.tail === 'both' ? 2 : 1))
        : value(above, scale, moved, column);
    return (1 - weight) * value(high, scale, moved, column) + weight * many;
  };
}

function columnOf({ p, level, tail }: CriticalQuestion): number {
  return (
    (shares.indexOf(p as 0.5) * levels.length + levels.indexOf(level as 0.9)) * tails.length +
    tails.indexOf(tail)
  );
}

/** Bilinear in scale and offset. */
function value(n: number, scale: number, offset: number, column: number): number {
  const s = Math.min(Math.floor(scale), SCALES.length - 2);
  const place = (offset + RANGE) * 4;
  const o = Math.min(Math.floor(place), OFFSETS.length - 2);
  const u = scale - s;
  const v = place - o;
  const at = (i: number, j: number) =>
    rootAt(((n * SCALES.length + i) * OFFSETS.length + j) * COLUMNS + column);
  return (
    (1 - u) * ((1 - v) * at(s, o) + v * at(s, o + 1)) + u * ((1 - v) * at(s + 1, o) + v * at(s + 1, o + 1))
  );
}
