import type { Construction, Protocol, Rig, Specification } from './kinds.ts';
import { loadConstruction, loadProtocol, loadRig, loadSpecification, type Whereabouts } from './load.ts';

/** Where the documents that runs share come from. Each reader throws InputError with all that is wrong with a file. */
export interface Library {
  readonly protocol: (where: Whereabouts) => Protocol;
  readonly rig: (where: Whereabouts) => Rig;
  readonly construction: (where: Whereabouts) => Construction;
  readonly specification: (where: Whereabouts) => Specification;
}

/** Each document is read from its file whenever it is asked for. */
export const OPEN_SHELF: Library = {
  protocol: loadProtocol,
  rig: loadRig,
  construction: loadConstruction,
  specification: loadSpecification,
};

/**
 * Each document is read once, however many runs name it: thousands of runs share a protocol and a rig. What is wrong
 * with one is kept as well, and said of every run that rests on it.
 */
export function rememberingLibrary(): Library {
  return {
    protocol: remembered(loadProtocol),
    rig: remembered(loadRig),
    construction: remembered(loadConstruction),
    specification: remembered(loadSpecification),
  };
}

function remembered<Kind>(load: (where: Whereabouts) => Kind): (where: Whereabouts) => Kind {
  const known = new Map<string, { readonly value: Kind } | { readonly error: unknown }>();
  const read = (where: Whereabouts) => {
    try {
      return { value: load(where) };
    } catch (error) {
      return { error };
    }
  };
  return (where) => {
    // Messages and results call the same file as each run does.
    const key = `${where.path}\n${where.named ?? where.path}`;
    const found = known.get(key) ?? read(where);
    known.set(key, found);
    if ('error' in found) throw found.error;
    return found.value;
  };
}
