// The small face of zod: a third of its size, and felt at the start of every command that reads a document.
import * as z from 'zod/mini';
import { describe, type Json } from './hover.ts';

// A schema reads one document and is gone: compiling it first would cost more than it saves.
z.config({ jitless: true });

type Any = z.core.$ZodType;

/** A key that may be left out. */
export function optional<S extends Any>(schema: S): z.ZodMiniOptional<S> {
  return z.optional(schema);
}

/** A list of things of one kind, at least so many. */
export function list<S extends Any>(item: S, description: string, least = 0): z.ZodMiniArray<S> {
  const schema = z.array(item);
  return describe(least > 0 ? schema.check(z.minLength(least)) : schema, description);
}

/** A map whose keys are the lab's own. */
export function mapOf<S extends Any>(value: S, description: string): z.ZodMiniRecord<z.ZodMiniString, S> {
  return describe(z.record(z.string(), value), description);
}

/** Something that may be written in two ways. */
export function either<A extends Any, B extends Any>(
  one: A,
  other: B,
  description: string,
): z.ZodMiniUnion<readonly [A, B]> {
  return describe(z.union([one, other]), description);
}

/** Anything: read by hand, or not at all. */
export function anything(): z.ZodMiniUnknown {
  return z.unknown();
}

/** A map with a fixed set of keys; any other key is an error with a suggestion. */
export function block<S extends z.core.$ZodLooseShape>(
  shape: S,
  description: string,
  json: Json = {},
): z.ZodMiniObject<S> {
  const known = Object.keys(shape);
  const stranger = z.unknown().check((context) => {
    context.issues.push({
      code: 'custom',
      input: context.value,
      message: 'unknown key',
      params: { code: 'unknown-key', known },
    });
  });
  const map = z.catchall(z.object(shape), stranger);
  describe(map, description, () => ({ additionalProperties: false, ...json }));
  return map as unknown as z.ZodMiniObject<S>;
}
