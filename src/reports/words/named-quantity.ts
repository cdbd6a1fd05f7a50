/** The quantity that a name is wanted for. */
export interface NamedQuantity {
  readonly quantity: string;
  readonly probability?: number | undefined;
  /** km, for a reliability. */
  readonly at?: number | undefined;
  readonly unit?: string | undefined;
  readonly variant?: string | undefined;
}

/** `energySpread` as words, for quantities that a language has no name for. */
export function splitWords(name: string): string {
  return name.replace(/(?<=\p{Ll})\p{Lu}/gu, (letter) => ` ${letter.toLowerCase()}`);
}

/** `C-114, C-115 and 3 more`, in the words of a language. */
export function enumerated(
  names: readonly string[],
  most: number,
  and: string,
  more: (rest: number) => string,
): string {
  const rest = names.length - most;
  if (rest > 0) return `${names.slice(0, most).join(', ')} ${and} ${more(rest)}`;
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} ${and} ${names.at(-1)}`;
}
