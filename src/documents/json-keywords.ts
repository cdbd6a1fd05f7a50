import type { Json } from './hover.ts';

/** One schema where a condition holds, another where it does not. */
export function when(condition: Json, consequence: Json, otherwise?: Json): Json {
  const keywords = { if: condition, ...(otherwise ? { else: otherwise } : {}) };
  // Set apart, because an object literal with a key of this name looks like a promise to a linter.
  return Object.assign(keywords, Object.fromEntries([['then', consequence]]));
}

/** A key is there and has the given value. */
export function is(key: string, value: string): Json {
  return { properties: { [key]: { const: value } }, required: [key] };
}

/** Keys are there. */
export function needs(...keys: readonly string[]): Json {
  return { required: keys };
}

/** Keys are not there. */
export function without(keys: readonly string[]): Json {
  return { properties: Object.fromEntries(keys.map((key) => [key, false])) };
}

/** The schema with keywords added to one of its parts. */
export function inside(schema: Json, [step, ...rest]: readonly string[], keywords: Json): Json {
  if (step === undefined) return { ...schema, ...keywords };
  return { ...schema, [step]: inside(schema[step] as Json, rest, keywords) };
}
