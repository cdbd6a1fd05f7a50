/** Parts of wheel and rig that are not the tyre: tube, valve, rim and spoke by CONTRACT, the others of their kind. */
const NOT_THE_TYRE: ReadonlySet<string> = new Set(
  [
    'tube',
    'valve',
    'rim',
    'spoke',
    'wheel',
    'hub',
    'axle',
    'bearing',
    'rig',
    'drum',
    'motor',
    'power',
  ].flatMap((part) => [part, `${part}s`]),
);

/** What a cause says of whose failure it was. */
export type Blame = 'tyre' | 'other' | 'unclear';

/**
 * Whose failure a noted cause is. The first word names the part (`tube seam`, `rim crack`); where such a part is named
 * only further on (`bead off the rim`) the failure stays the tyre's, and is said to be `unclear`. Common practice, no
 * source.
 */
export function blameOf(cause: string | null): Blame {
  const words = (cause ?? '')
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
  if (words.length === 0) return 'tyre';
  if (NOT_THE_TYRE.has(words[0]!)) return 'other';
  return words.some((word) => NOT_THE_TYRE.has(word)) ? 'unclear' : 'tyre';
}
