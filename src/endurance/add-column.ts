import type { ChannelSums } from './frame.ts';

/** Least and greatest value of the stretch that was added last; ±Infinity without values. */
export interface StretchRange {
  min: number;
  max: number;
}

/** One for all calls: a minute has hundreds of rows, and none of them should cost an object. */
const RANGE: StretchRange = { min: 0, max: 0 };

/** Adds rows `begin` to `end` of a column to the sums of its channel; there is at least one. */
export function addColumn(
  sums: ChannelSums,
  values: Float64Array,
  begin: number,
  end: number,
  reference: number,
): StretchRange {
  let sum = 0;
  let squares = 0;
  let min = values[begin]!;
  let max = min;
  for (let row = begin; row < end; row++) {
    const value = values[row]!;
    const difference = value - reference;
    sum += difference;
    squares += difference * difference;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  // One missing value makes the sum none.
  if (Number.isNaN(sum)) return addUneven(sums, values, begin, end, reference);
  // Counted apart: within the loop above, a coarse channel would make the processor guess wrong at every tie.
  let atMax = 0;
  for (let row = begin; row < end; row++) if (values[row] === max) atMax++;
  if (sums.count === 0) sums.first = values[begin]!;
  sums.last = values[end - 1]!;
  sums.count += end - begin;
  sums.sum += sum;
  sums.squares += squares;
  return addRange(sums, min, max, atMax);
}

/** The same for a stretch with missing values. */
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
