/** An English sentence with gaps, `{}`, and the same in another language, with the gaps by number, `{1}`; `{1~}` is put into the dative. */
export type Template = readonly [english: string, other: string];

/** Longer sentences hold foreign text that no template has room for. */
const MOST = 1500;

/**
 * Translates sentences that were composed from templates: a result keeps whole sentences, whose wording is fixed but for
 * the numbers and names in them, so that the English template is the key, as in message catalogues. Linear in the length of the text:
 * a gap ends at the first place where the words behind it stand.
 *
 * @param written how a gap is written in the other language, such as with its decimal mark.
 * @returns null for a sentence that no template has.
 */
export function translator(
  templates: readonly Template[],
  written: (gap: string, isDative: boolean) => string,
): (sentence: string) => string | null {
  let parts: readonly { readonly pieces: readonly string[]; readonly other: string }[] | null = null;
  return (sentence) => {
    // Taken apart at the first sentence: reports in English have none.
    parts ??= templates.map(([english, other]) => ({
      pieces: english.split('{}').map((piece, i) => (i === 0 ? lowered(piece) : piece)),
      other,
    }));
    const text = sentence.trim();
    if (text.length > MOST) return null;
    const [body, end] = text.endsWith('.') ? [text.slice(0, -1), '.'] : [text, ''];
    for (const { pieces, other } of parts) {
      const gaps = gapsOf(lowered(body), pieces);
      if (gaps === null) continue;
      return (
        other.replace(/\{(\d)(~?)\}/g, (_, number: string, dative: string) =>
          written(gaps[Number(number) - 1] ?? '', dative === '~'),
        ) + end
      );
    }
    return null;
  };
}

/** What stands in the gaps between the pieces; null where the text is made of others. */
function gapsOf(text: string, pieces: readonly string[]): string[] | null {
  const [first = '', ...rest] = pieces;
  const last = rest.pop();
  if (last === undefined) return text === first ? [] : null;
  if (!text.startsWith(first) || !text.endsWith(last)) return null;
  const gaps: string[] = [];
  let from = first.length;
  for (const piece of rest) {
    const at = text.indexOf(piece, from + 1);
    if (at < 0) return null;
    gaps.push(text.slice(from, at));
    from = at + piece.length;
  }
  const end = text.length - last.length;
  if (end <= from) return null;
  return [...gaps, text.slice(from, end)];
}

/** Sentences begin with a capital or not, by where they stand. */
function lowered(text: string): string {
  return text.replace(/^\p{Lu}(?=\p{Ll}| )/u, (letter) => letter.toLowerCase());
}
