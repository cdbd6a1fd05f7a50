import type * as z from 'zod/mini';

/** Keywords of JSON Schema. */
export type Json = Readonly<Record<string, unknown>>;

interface Note {
  readonly description: string;
  /** Made when it is asked for: only a JSON Schema needs it, and most commands make none. */
  readonly json: () => Json;
}

const notes = new WeakMap<z.core.$ZodType, Note>();

/**
 * Gives a schema the text that an editor shows over its key, and the keywords that zod cannot know: what a scalar
 * may look like to an editor, which gives it a type, where we read text.
 */
export function describe<S extends z.core.$ZodType>(
  schema: S,
  description: string,
  json: () => Json = () => ({}),
): S {
  notes.set(schema, { description, json });
  return schema;
}

/** Description and keywords of a schema for its JSON Schema; nothing where it has none. */
export function noteOf(schema: z.core.$ZodType): Json {
  const note = notes.get(schema);
  return note ? { description: note.description, ...note.json() } : {};
}
