/** What a damage means for the outcome of a drop. */
export type DamageMeaning =
  /** The tyre gave way: a failure, where the protocol's criterion counts it. */
  | 'tyre'
  /** Another mode than the pinch: bead unseated or burped (DROP-41). */
  | 'bead'
  /** A leak that is not the tyre's (DROP-42). */
  | 'other-part'
  /** The rim that all later drops would meet (DROP-36). */
  | 'rim'
  /** Seen, and by itself no failure. */
  | 'trace';

interface DamageEntry {
  readonly title: string;
  readonly meaning: DamageMeaning;
}

/**
 * The codes that a log's damage column may hold, several of them with `;`, `+`, `/` or a space between, each with its
 * zone behind `@` if it is noted (`casing-cut@sidewall`). Common practice, no source; two parallel cuts are the
 * classic mark of a pinch.
 */
export const DAMAGES: ReadonlyMap<string, DamageEntry> = new Map<string, DamageEntry>([
  ['pinch-two-cuts', { title: 'two parallel cuts', meaning: 'tyre' }],
  ['pinch-one-cut', { title: 'one of two cuts goes through', meaning: 'tyre' }],
  ['tube-cut', { title: 'tube cut, casing whole', meaning: 'tyre' }],
  ['casing-cut', { title: 'casing cut', meaning: 'tyre' }],
  ['casing-cut-tread', { title: 'casing cut under the tread', meaning: 'tyre' }],
  ['casing-cut-sidewall', { title: 'casing cut in the sidewall', meaning: 'tyre' }],
  ['cord-broken', { title: 'cords broken', meaning: 'tyre' }],
  ['bead-broken', { title: 'bead core broken', meaning: 'tyre' }],
  ['cord-visible', { title: 'cord visible or printed', meaning: 'trace' }],
  ['scuff', { title: 'scuffed', meaning: 'trace' }],
  ['bead-burp', { title: 'air burped at the bead', meaning: 'bead' }],
  ['bead-unseated', { title: 'bead unseated', meaning: 'bead' }],
  ['rim-dent', { title: 'rim dented', meaning: 'rim' }],
  ['rim-crack', { title: 'rim cracked', meaning: 'rim' }],
  ['tube-valve', { title: 'leak at the valve', meaning: 'other-part' }],
  ['tube-seam', { title: 'leak at the seam of the tube', meaning: 'other-part' }],
  ['rim-tape', { title: 'leak at the rim tape', meaning: 'other-part' }],
  ['other', { title: 'something else', meaning: 'tyre' }],
]);

/** Zones of a tyre, as written behind `@`. */
export const ZONES = ['tread', 'shoulder', 'sidewall', 'bead', 'inside'] as const;

export interface Damage {
  readonly code: string;
  readonly zone: string | null;
  /** Null for a word of the lab's own: it says nothing to the program. */
  readonly meaning: DamageMeaning | null;
}

const read = new Map<string, readonly Damage[]>();
const MOST_KEPT = 1000;

/** The damages that a cell names, in their order. */
export function damagesIn(text: string): readonly Damage[] {
  const known = read.get(text);
  if (known !== undefined) return known;
  const damages = text
    .split(/[\s;+/|]+/u)
    .filter((word) => word !== '')
    .map((word): Damage => {
      const [code = '', zone] = word.toLowerCase().split('@');
      return { code, zone: zone ?? null, meaning: DAMAGES.get(code)?.meaning ?? null };
    });
  if (read.size < MOST_KEPT) read.set(text, damages);
  return damages;
}
