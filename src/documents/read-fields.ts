import type * as z from 'zod/mini';
import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import type { Findings } from './findings.ts';
import { isMap, type Path, type Yaml, type YamlMap } from './yaml-value.ts';

export type Shape = Readonly<Record<string, z.ZodMiniType>>;
/** What the good fields of a map hold; a field that is absent or wrong is undefined. */
export type Fields<S extends Shape> = { readonly [K in keyof S]?: z.output<S[K]> | undefined };
/** The same once nothing was found wrong. */
export type Whole<S extends Shape> = z.output<z.ZodMiniObject<S>>;

/**
 * Reads the keys of one map, each on its own, so that a rule over several fields can still be asked of the good
 * ones: a person gets to see all that is wrong with a file at once, not the first layer of it.
 */
export function readFields<S extends Shape>(
  shape: S,
  value: YamlMap,
  path: Path,
  findings: Findings,
): Fields<S> {
  const names = Object.keys(shape);
  for (const key of Object.keys(value)) {
    if (!names.includes(key)) reportUnknownKey([...path, key], names, findings);
  }
  const fields: Record<string, unknown> = {};
  for (const name of names) {
    const result = shape[name]!.safeParse(value[name]);
    if (result.success) fields[name] = result.data;
    else reportIssues(result.error.issues, [...path, name], findings);
  }
  return fields as Fields<S>;
}

/** The maps of a list, each with its place; anything else in the list is reported and left out. */
export function readEach<S extends Shape>(
  shape: S,
  path: Path,
  findings: Findings,
): { readonly path: Path; readonly fields: Fields<S> }[] {
  const list = findings.valueAt(path);
  if (!Array.isArray(list)) return [];
  return list.flatMap((item: Yaml, i) => {
    const place = [...path, i];
    if (isMap(item)) return [{ path: place, fields: readFields(shape, item, place, findings) }];
    findings.add(place, 'not-a-map', `found ${nameOf(item)}, expected a map such as { key: value }`);
    return [];
  });
}

function reportUnknownKey(path: Path, known: readonly string[], findings: Findings): void {
  const key = String(path.at(-1));
  const near = didYouMean(key, known);
  const help = near === '' ? `; expected one of ${known.join(', ')}` : near;
  findings.add(path, 'unknown-key', `found the unknown key ${quote(key)}${help}`, 'key');
}

/** zod's issues as problems at their places. */
function reportIssues(issues: readonly z.core.$ZodIssue[], base: Path, findings: Findings): void {
  for (const issue of issues) {
    const path = [...base, ...(issue.path as (string | number)[])];
    const found = findings.valueAt(path);
    if (issue.code === 'custom' && issue.params?.code === 'unknown-key') {
      reportUnknownKey(path, issue.params.known, findings);
    } else if (issue.code === 'custom') {
      findings.add(path, String(issue.params?.code ?? 'bad-value'), issue.message);
    } else if (issue.code === 'invalid_union' && found !== undefined) {
      reportIssues(nearestBranch(issue.errors), path, findings);
    } else if (found === undefined) {
      const message = `the key ${quote(String(path.at(-1)))} is missing; add it: ${expectation(issue)}`;
      findings.add(path, 'missing-key', message, 'key');
    } else if (issue.code === 'too_small') {
      findings.add(path, 'too-few', 'found an empty list, expected at least one entry');
    } else {
      findings.add(path, 'wrong-shape', `found ${nameOf(found)}, expected ${expectation(issue)}`);
    }
  }
}

/** Of the alternatives of a field, the one whose shape (text, map, list) was met. */
function nearestBranch(branches: readonly (readonly z.core.$ZodIssue[])[]): readonly z.core.$ZodIssue[] {
  return branches.find((issues) => !issues.some(isWrongShape)) ?? branches[0] ?? [];
}

function isWrongShape(issue: z.core.$ZodIssue): boolean {
  return issue.code === 'invalid_type' && issue.path.length === 0;
}

const SHAPES: Readonly<Record<string, string>> = { object: 'a map', record: 'a map', array: 'a list' };

function expectation(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_union') return issue.errors.map((branch) => branch[0]?.message).join(', or ');
  return (issue.code === 'invalid_type' && SHAPES[issue.expected]) || issue.message;
}

function nameOf(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'nothing' : quote(value);
  return Array.isArray(value) ? 'a list' : 'a map';
}
