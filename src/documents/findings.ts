import { InputError, ProblemList } from '../problem/problem.ts';
import type { Source } from './kinds.ts';
import type { Path, Yaml, YamlMap } from './yaml-value.ts';

/** A YAML file that was read and has the expected `format`: its values are still all text. */
export interface YamlDocument {
  readonly source: Source;
  readonly value: YamlMap;
}

/** Collects what is wrong with one document, each at its place, to be thrown together in the order of the lines. */
export class Findings {
  readonly #document: YamlDocument;
  readonly #problems = new ProblemList();

  constructor(document: YamlDocument) {
    this.#document = document;
  }

  add(path: Path, code: string, message: string, part: 'key' | 'value' = 'value'): void {
    const { source } = this.#document;
    this.#problems.add({ file: source.path, ...source.locate(path, part), code, message });
  }

  /** What the document has at a path, or undefined. */
  valueAt(path: Path): Yaml | undefined {
    let here: Yaml | undefined = this.#document.value;
    for (const step of path) {
      if (here === undefined || typeof here === 'string') return undefined;
      here = (here as Readonly<Record<string | number, Yaml>>)[step];
    }
    return here;
  }

  /** @throws InputError when anything was found. */
  throwIfAny(): void {
    if (this.#problems.isEmpty) return;
    const inOrder = [...this.#problems.all()].sort(
      (a, b) => (a.line ?? Infinity) - (b.line ?? Infinity) || (a.column ?? 0) - (b.column ?? 0),
    );
    throw new InputError(inOrder);
  }
}
