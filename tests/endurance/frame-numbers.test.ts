import { describe, expect, it } from 'vitest';
import { emptySums, type Frame } from '../../src/endurance/frame.ts';
import { frameOfNumbers, numbersOfFrame } from '../../src/endurance/frame-numbers.ts';

const condition = (number: number) => ({
  condition: number,
  rows: number,
  time: 10 * number,
  distance: number,
  firstLine: 5,
  lastLine: 9,
});

/** A minute of one channel without a value, run under some conditions. */
function minute(conditions: readonly number[]): Frame {
  const mark = { time: 60_000, line: 5, condition: conditions[0]!, columns: [Number.NaN, 7] };
  return {
    minute: 1,
    state: 'run',
    ranges: [{ file: 3, from: 100, to: 200, line: 5 }],
    rows: 4,
    first: mark,
    last: { ...mark, line: 9 },
    channels: [emptySums()],
    conditions: conditions.map(condition),
    time: 1,
    integral: 2,
    standing: 3,
    unverified: 4,
    events: null,
  };
}

describe('a minute as plain data', () => {
  it('passes through JSON exactly, with what is no number', () => {
    const frame = minute([1, 2]);
    const stored = JSON.parse(JSON.stringify(numbersOfFrame(frame)));
    expect(frameOfNumbers(stored, 'run', 4, 3)).toEqual(frame);
  });

  it('is the same whichever of its conditions was met first', () => {
    const { first: _, last: __, ...numbers } = numbersOfFrame(minute([2, 1]));
    expect(numbersOfFrame(minute([1, 2]))).toMatchObject(numbers);
  });
});
