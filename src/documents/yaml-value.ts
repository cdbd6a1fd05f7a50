/** Every scalar of a document is text, as written: what it means is for the field that reads it. */
export type Yaml = string | readonly Yaml[] | YamlMap;
/** Without prototype, so that a key named `constructor` is a key like any other. */
export interface YamlMap {
  readonly [key: string]: Yaml;
}

/** Whether a value is a map (not text, not a list). */
export function isMap(value: Yaml): value is YamlMap {
  return typeof value === 'object' && !Array.isArray(value);
}

/** Steps into a document: keys of maps and indices of lists. */
export type Path = readonly (string | number)[];
