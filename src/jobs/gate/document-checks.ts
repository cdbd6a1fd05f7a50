import type { Construction, Source } from '../../documents/kinds.ts';
import { doubtsOf } from '../../documents/plausible.ts';
import { quote } from '../../problem/echo.ts';
import type { Problem } from '../../problem/problem.ts';
import { didYouMean } from '../../problem/suggest.ts';
import { nameOf, type Repository } from './repository.ts';

/** What is wrong among the documents of a repository, each at its place. */
export interface DocumentChecks {
  /** Nothing is judged before these are settled. */
  readonly problems: readonly Problem[];
  /** What a reviewer should look at. */
  readonly remarks: readonly Problem[];
}

/**
 * Sees that documents go together: every id and revision stands once, parents exist and lead nowhere in a circle,
 * waivers are for something that is there, pinned versions exist, and the factors are such as a tyre can have.
 */
export function checkDocuments(repository: Repository): DocumentChecks {
  const { constructions, specifications, waivers } = repository;
  const doubts = constructions.map(doubtsOf);
  return {
    problems: [
      ...twins(constructions.map((document) => ({ name: nameOf(document), source: document.source }))),
      ...twins(specifications.map((document) => ({ name: nameOf(document), source: document.source }))),
      ...twins(waivers.map(({ id, source }) => ({ name: id, source }))),
      ...circles(constructions),
      ...idleWaivers(repository),
      ...doubts.flatMap(({ impossible }) => impossible),
    ],
    remarks: [
      ...doubts.flatMap(({ unusual }) => unusual),
      ...unknownParents(constructions),
      ...unknownPins(repository),
    ],
  };
}

/** Documents of one kind that share a name: which of them is meant nobody can say. */
export function twins(
  documents: readonly { readonly name: string; readonly source: Pick<Source, 'path' | 'locate'> }[],
): Problem[] {
  const first = new Map<string, string>();
  return documents.flatMap(({ name, source }) => {
    const twin = first.get(name);
    if (twin === undefined) {
      first.set(name, source.path);
      return [];
    }
    const message = `found ${quote(name)} a second time (first in ${twin}), expected each once; give one another id or revision`;
    return [{ file: source.path, ...source.locate(['id']), code: 'duplicate-id', message }];
  });
}

function circles(constructions: readonly Construction[]): Problem[] {
  const byName = new Map(constructions.map((construction) => [nameOf(construction), construction]));
  return constructions.flatMap((construction) => {
    const { parent, source } = construction;
    const seen = new Set([nameOf(construction)]);
    for (let name = parent; name !== null; name = byName.get(name)?.parent ?? null) {
      if (seen.has(name)) {
        const message = `the parents of ${quote(nameOf(construction))} go in a circle through ${quote(name)}; expected a line that ends: correct one of them`;
        return [{ file: source.path, ...source.locate(['parent']), code: 'circular-parent', message }];
      }
      seen.add(name);
    }
    return [];
  });
}

/** No verdict hangs on a parent, and a gate may look at a part of the repository. */
function unknownParents(constructions: readonly Construction[]): Problem[] {
  const known = new Set(constructions.map(nameOf));
  return constructions.flatMap(({ parent, source }) => {
    if (parent === null || known.has(parent)) return [];
    const message = `found the parent ${quote(parent)}, which is not among the constructions; add its file, or correct the name${didYouMean(parent, [...known])}`;
    return [{ file: source.path, ...source.locate(['parent']), code: 'unknown-parent', message }];
  });
}

/** A waiver of something that is not there would be believed to hold, and does not. */
function idleWaivers({ waivers, constructions, specifications }: Repository): Problem[] {
  const known = new Set(constructions.map(nameOf));
  const criteria = new Map(specifications.map((one) => [nameOf(one), one.criteria.map(({ id }) => id)]));
  return waivers.flatMap(({ source, specification, criterion, construction }) => {
    const missing = (key: string, what: string, name: string, all: readonly string[]): Problem => {
      const message = `found the ${what} ${quote(name)}, which is not there; correct the name, or take the waiver away${didYouMean(name, all)}`;
      return { file: source.path, ...source.locate(['scope', key]), code: `unknown-${what}`, message };
    };
    const ids = criteria.get(specification);
    return [
      ...(known.has(construction) ? [] : [missing('construction', 'construction', construction, [...known])]),
      ...(ids === undefined
        ? [missing('specification', 'specification', specification, [...criteria.keys()])]
        : ids.includes(criterion)
          ? []
          : [missing('criterion', 'criterion', criterion, ids)]),
    ];
  });
}

/** Pins that no protocol of the repository has: criteria to which no test can speak. */
function unknownPins({ specifications, protocols }: Repository): Problem[] {
  return specifications.flatMap(({ criteria, source }) =>
    criteria.flatMap(({ protocol }, i) => {
      const versions = protocol === null ? undefined : protocols.get(protocol.id);
      if (protocol?.version == null || protocols.size === 0 || versions?.has(protocol.version)) return [];
      const pinned = quote(`${protocol.id}@${protocol.version}`);
      const here =
        versions === undefined
          ? 'no protocol of that id is here'
          : `that protocol is here as ${[...versions].map((version) => quote(version)).join(', ')} only`;
      const message = `found the pin ${pinned}, and ${here}; correct the pin, or add the file`;
      const place = source.locate(['criteria', i, 'protocol']);
      return [{ file: source.path, ...place, code: 'unknown-version', message }];
    }),
  );
}
