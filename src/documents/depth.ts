import type { CST } from 'yaml';

/**
 * How deep the maps and lists of a token stream are nested, and the offset of the deepest. Walks with a stack of
 * its own, because a document made to exhaust the call stack is what this is there to find.
 */
export function depthOf(tokens: readonly CST.Token[]): { readonly depth: number; readonly offset: number } {
  let deepest = { depth: 0, offset: 0 };
  const rest: [token: CST.Token, depth: number][] = tokens.map((token) => [token, 0]);
  for (let next = rest.pop(); next; next = rest.pop()) {
    const [token, depth] = next;
    if (depth > deepest.depth && 'offset' in token) deepest = { depth, offset: token.offset };
    if (token.type === 'document' && token.value) rest.push([token.value, depth]);
    if (!('items' in token)) continue;
    for (const { key, value } of token.items) {
      if (key) rest.push([key, depth + 1]);
      if (value) rest.push([value, depth + 1]);
    }
  }
  return deepest;
}
