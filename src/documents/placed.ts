import { isAlias, isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { quote } from '../problem/echo.ts';
import type { Yaml } from './yaml-value.ts';

/** A value of a document with the offsets, in the text, of itself and of everything inside. */
export interface Placed {
  readonly value: Yaml;
  readonly offset: number;
  readonly children: ReadonlyMap<
    string | number,
    { readonly keyOffset: number; readonly placed: Placed }
  > | null;
}

type Report = (offset: number, code: string, message: string) => void;

/** How many values aliases may unfold into: far more than a document needs, far less than would be felt. */
const MOST_UNFOLDED = 2000;

/** Turns the nodes of a document into plain values with their places; what is wrong goes to `report`. */
export function place(root: Node, report: Report): Placed {
  return new Placer(report).place(root);
}

class Placer {
  readonly #report: Report;
  readonly #anchors = new Map<string, Node>();
  readonly #open = new Set<Node>();
  /** Where the outermost of the aliases stands that are being unfolded. */
  #unfolding: number | null = null;
  #unfolded = 0;

  constructor(report: Report) {
    this.#report = report;
  }

  place(node: Node | null): Placed {
    const offset = node?.range?.[0] ?? 0;
    if (!node || this.#isTooMuch()) return { value: '', offset, children: null };
    if (isAlias(node)) return this.#alias(node.source, offset);
    if ('anchor' in node && node.anchor) this.#anchors.set(node.anchor, node);
    this.#open.add(node);
    const placed = this.#collection(node, offset);
    this.#open.delete(node);
    return placed;
  }

  #collection(node: Node, offset: number): Placed {
    if (isMap<Node, Node>(node)) return this.#map(node.items, offset);
    if (isSeq<Node>(node)) {
      const items = node.items.map((item) => this.place(item));
      const children = new Map(items.map((placed, i) => [i, { keyOffset: placed.offset, placed }]));
      return { value: items.map((item) => item.value), offset, children };
    }
    return { value: isScalar(node) ? String(node.value ?? '') : '', offset, children: null };
  }

  #map(pairs: readonly Pair<Node, Node | null>[], offset: number): Placed {
    const value: Record<string, Yaml> = Object.create(null);
    const children = new Map<string, { keyOffset: number; placed: Placed }>();
    for (const { key, value: content } of pairs) {
      const keyOffset = key?.range?.[0] ?? offset;
      if (!isScalar(key)) {
        this.#report(
          keyOffset,
          'complex-key',
          'found a key that is no text, expected a plain word; rewrite the key',
        );
        continue;
      }
      const name = String(key.value ?? '');
      if (children.has(name)) {
        this.#report(
          keyOffset,
          'duplicate-key',
          `found the key ${quote(name)} twice, expected it once; remove one`,
        );
        continue;
      }
      const placed = this.place(content);
      // An empty value has no place of its own: that of its key serves.
      children.set(name, { keyOffset, placed: content ? placed : { ...placed, offset: keyOffset } });
      value[name] = placed.value;
    }
    return { value, offset, children };
  }

  #alias(name: string, offset: number): Placed {
    const target = this.#anchors.get(name);
    if (!target || this.#open.has(target)) {
      const found = target ? 'stands inside what it refers to' : 'refers to no anchor before it';
      this.#report(offset, 'bad-alias', `the alias ${quote(`*${name}`)} ${found}; write the value out`);
      return { value: '', offset, children: null };
    }
    const outer = this.#unfolding;
    this.#unfolding = outer ?? offset;
    const placed = this.place(target);
    this.#unfolding = outer;
    return { ...placed, offset };
  }

  /** Counts what aliases unfold into; one message, at the alias at which it became too much. */
  #isTooMuch(): boolean {
    if (this.#unfolding === null) return false;
    this.#unfolded += 1;
    if (this.#unfolded <= MOST_UNFOLDED) return false;
    if (this.#unfolded === MOST_UNFOLDED + 1) {
      const found = `found aliases that unfold into more than ${MOST_UNFOLDED} values, expected a plain document`;
      this.#report(this.#unfolding, 'alias-bomb', `${found}; write the values out`);
    }
    return true;
  }
}
