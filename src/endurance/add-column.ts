import type { ChannelSums } from './frame.ts';

/** Least and greatest value of the stretch that was added last; ±Infinity without values. */
export interface StretchRange {
  min: number;
  max: number;
}

/** One for all calls: a minute has hundreds of rows, and none of them should cost an object. */
const RANGE: StretchRange = { min: 0, max: 0 };

/**
 * Adds rows `begin` to `end` of a column to the sums of its channel.
 *
 * Values are whole; as long as they differ from the reference by less than 2^30 and none is missing, least and
 * greatest are found without branches, which noise would make the processor guess wrong.
 */
export function addColumn(
  sums: ChannelSums,
  values: Float64Array,
  begin: number,
  end: number,
  reference: number,
): StretchRange {
  let sum = 0;
  let squares = 0;
  let min = (values[begin]! - reference) | 0;
  let max = min;
  let odd = 0;
  for (let row = begin; row < end; row++) {
    const difference = values[row]! - reference;
    const whole = difference | 0;
    // 0 where the whole number is the difference itself; a missing value, or one beyond 32 bits, is not.
    odd |= whole === difference ? (whole ^ (whole << 1)) & 0x80000000 : 1;
    sum += difference;
    squares += difference * difference;
    const above = whole - max;
    max += above & ~(above >> 31);
    const below = whole - min;
    min += below & (below >> 31);
  }
  if (odd !== 0) return addUneven(sums, values, begin, end, reference);
  const top = max + reference;
  let atMax = 0;
  for (let row = begin; row < end; row++) if (values[row] === top) atMax++;
  if (sums.count === 0) sums.first = values[begin]!;
  sums.last = values[end - 1]!;
  sums.count += end - begin;
  sums.sum += sum;
  sums.squares += squares;
  return addRange(sums, min + reference, top, atMax);
}

/** The same for a stretch with missing values, or values far from the reference. */
function addUneven(
  sums: ChannelSums,
  values: Float64Array,
  begin: number,
  end: number,
  reference: number,
): StretchRange {
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let atMax = 0;
  for (let row = begin; row < end; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) {
      sums.missing += 1;
      continue;
    }
    const difference = value - reference;
    if (sums.count === 0) sums.first = value;
    sums.last = value;
    sums.count += 1;
    sums.sum += difference;
    sums.squares += difference * difference;
    if (value < min) min = value;
    if (value > max) atMax = 0;
    if (value >= max) {
      max = value;
      atMax++;
    }
  }
  return addRange(sums, min, max, atMax);
}

function addRange(sums: ChannelSums, min: number, max: number, atMax: number): StretchRange {
  if (min < sums.min) sums.min = min;
  if (max > sums.max) {
    sums.max = max;
    sums.atMax = atMax;
  } else if (max === sums.max) {
    sums.atMax += atMax;
  }
  RANGE.min = min;
  RANGE.max = max;
  return RANGE;
}
