import { InvalidArgumentError } from 'commander';

/** A whole number of an option, within its range. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = /^\d+$/u.test(text.trim()) ? Number(text) : Number.NaN;
    if (value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Expected a whole number from ${least} to ${most}.`);
  };
}
