import { expect } from 'vitest';

/** A number expected of a case, and how closely. */
interface Expected {
  readonly name: string;
  readonly value: unknown;
  readonly rel_tol?: number | null;
  readonly abs_tol?: number | null;
}

/** A reference case: its data, and what they must give. */
interface Published {
  readonly id: string;
  readonly title: string;
  readonly seen: string;
  readonly expected: readonly Expected[];
}

/** The title of a case's test: its id, what it is, and whether its numbers were found in print, recalled or computed. */
export function titleOf(reference: Published): string {
  return `${reference.id} ${reference.title} (seen: ${reference.seen})`;
}

/** The expected number of that name. */
export function expectedOf(reference: Published, name: string): number {
  const entry = reference.expected.find((one) => one.name === name);
  if (typeof entry?.value !== 'number') throw new Error(`${reference.id} has no number "${name}"`);
  return entry.value;
}

/** Checks one expected entry of a case to the tolerance that stands beside it. */
export function expectNumber(reference: Published, name: string, found: number | null | undefined): void {
  const entry = reference.expected.find((one) => one.name === name);
  if (!entry) throw new Error(`${reference.id} has no expected value "${name}"`);
  const value = entry.value as number;
  const bound = Math.max((entry.rel_tol ?? 0) * Math.abs(value), entry.abs_tol ?? 0);
  const close = typeof found === 'number' && Math.abs(found - value) <= bound;
  expect(close, `${reference.id} ${name}: ${found} against ${value} ± ${bound}`).toBe(true);
}

/**
 * Checks every expected entry of a case: `found` must name them all but those in `elsewhere`, so that no number of a case
 * is left out in silence.
 */
export function expectWhole(
  reference: Published,
  found: Readonly<Record<string, unknown>>,
  elsewhere: readonly string[] = [],
): void {
  const names = new Set(reference.expected.map((one) => one.name));
  expect(new Set([...Object.keys(found), ...elsewhere])).toEqual(names);
  for (const { name, value } of reference.expected) {
    if (elsewhere.includes(name)) continue;
    if (typeof value === 'number') expectNumber(reference, name, found[name] as number);
    else expect(found[name], `${reference.id} ${name}`).toEqual(value);
  }
}
