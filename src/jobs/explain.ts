import { CATALOGUE } from '../conformance/catalogue/catalogue.ts';
import { HEAVIER } from '../conformance/catalogue/heavier.ts';
import { DRUM_VISIBILITY } from '../conformance/drum-visibility.ts';
import { VISIBILITY } from '../conformance/visibility.ts';
import { echo } from '../problem/echo.ts';
import { suggest } from '../problem/suggest.ts';
import type { Explanation } from '../result/explanation.ts';

/** What a code means, or the nearest one to a word that is none. */
export type Explained =
  | { readonly ok: true; readonly explanations: readonly Explanation[] }
  | { readonly ok: false; readonly why: string };

/**
 * Explains one code of the catalogue, or lists all of them.
 *
 * @param word the code in any case, with or without its nought (`DROP-4`); null for all.
 */
export function explain(word: string | null): Explained {
  if (word === null) return { ok: true, explanations: [...CATALOGUE.values()].map(explanationOf) };
  const code = word
    .trim()
    .toUpperCase()
    .replace(/^(DROP|DRUM)[-_ ]?(\d)$/u, '$1-0$2')
    .replace(/^(DROP|DRUM)[_ ]?(\d\d)$/u, '$1-$2');
  const entry = CATALOGUE.get(code);
  if (entry !== undefined) return { ok: true, explanations: [explanationOf(entry)] };
  const near = suggest(code, [...CATALOGUE.keys()]);
  const help = near === null ? 'tirelab explain lists them all' : `did you mean ${near}?`;
  return { ok: false, why: `"${echo(word)}" is no code of the catalogue; ${help}` };
}

function explanationOf({
  code,
  title,
  severity,
  scope,
  effect,
  excuses,
}: {
  readonly code: string;
  readonly title: string;
  readonly severity: Explanation['severity'];
  readonly scope: Explanation['scope'];
  readonly effect: string;
  readonly excuses: boolean;
}): Explanation {
  const visible = [...VISIBILITY, ...DRUM_VISIBILITY].find((row) => row.code === code);
  return {
    code,
    title,
    severity,
    scope,
    heavier: HEAVIER.get(code) ?? null,
    effect,
    excuses,
    seen: visible?.seen ?? [],
    from: visible?.from ?? null,
    unseen: visible?.unseen || null,
  };
}
