/**
 * A value made at its first use. Schemas are built this way, so that a command pays only for the kinds of
 * document that it reads (building all of them would be felt at every start).
 */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
