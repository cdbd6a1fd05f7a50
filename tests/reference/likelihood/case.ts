import { expect } from 'vitest';
import type { Observation } from '../../../src/statistics/likelihood/observation.ts';

/** A case of the published and computed reference cases: what these tests read of it. */
interface Case {
  readonly id: string;
  readonly seen: string;
  readonly expected: readonly {
    readonly name: string;
    readonly value: unknown;
    readonly tol: number;
    readonly tol_kind: string;
  }[];
}

/** The title of a test of a case: its id, and whether its numbers were found in print, recalled or computed. */
export function titleOf(reference: Case): string {
  return `${reference.id} (seen: ${reference.seen})`;
}

/** Compares numbers with the entry of that name, to its own tolerance; the entry must be there and as long. */
export function expectCase(reference: Case, name: string, found: number | readonly (number | null)[]): void {
  const entry = reference.expected.find((one) => one.name === name);
  if (!entry) throw new Error(`${reference.id} has no expected value "${name}"`);
  const values = (Array.isArray(entry.value) ? entry.value : [entry.value]) as number[];
  const numbers = typeof found === 'number' ? [found] : found;
  expect(numbers).toHaveLength(values.length);
  for (const [i, value] of values.entries()) {
    const bound = entry.tol_kind === 'rel' ? entry.tol * Math.abs(value) : entry.tol;
    const error = Math.abs(numbers[i]! - value);
    expect(error <= bound, `${reference.id} ${name}[${i}]: ${numbers[i]} against ${value} ± ${bound}`).toBe(
      true,
    );
  }
}

/** Relative agreement: |found − value| ≤ tolerance·|value|. */
export function expectRelative(found: number | null, value: number, tolerance: number, what = ''): void {
  const error = Math.abs(found! - value);
  expect(found !== null && error <= tolerance * Math.abs(value), `${what}: ${found} against ${value}`).toBe(
    true,
  );
}

/** n hits at each level x, of which some failed. */
export function quantal(
  x: readonly number[],
  n: readonly number[],
  failed: readonly number[],
): Observation[] {
  return x.flatMap((level, i) => [
    ...(failed[i]! > 0 ? [{ lower: -Infinity, upper: level, count: failed[i]! }] : []),
    ...(n[i]! > failed[i]! ? [{ lower: level, upper: Infinity, count: n[i]! - failed[i]! }] : []),
  ]);
}

/** One drop at each level, failed or not. */
export function drops(levels: readonly number[], fail: readonly number[]): Observation[] {
  return quantal(
    levels,
    levels.map(() => 1),
    fail,
  );
}
