import { CATALOGUE, codeIn } from '../conformance/catalogue/catalogue.ts';
import { quote } from '../problem/echo.ts';

/** Which specimen another one was tested again for, why, and on whose word. Both are kept. */
export interface Replacement {
  readonly specimen: string;
  /** A code of the catalogue that does not depend on the result. */
  readonly reason: string;
  readonly approver: string;
}

/** What the cells of a specimen's row say of a retest; null where it is none, a sentence where it cannot be one. */
export function replacementOf(
  specimen: string,
  replaces: string | null,
  reason: string | null,
  approver: string | null,
): Replacement | { readonly wrong: string } | null {
  if (replaces === null) return null;
  const found = `found ${quote(specimen)} in place of ${quote(replaces)}`;
  if (replaces === specimen) return { wrong: `${found}, expected another specimen; correct one of them` };
  const entry = CATALOGUE.get(codeIn(reason ?? '') ?? '');
  if (!entry?.excuses) {
    const said = entry === undefined ? quote(reason ?? '') : `${entry.code} (${entry.title})`;
    const wrong = `${found} for the reason ${said}, expected a code of the catalogue that does not depend on the result, such as DROP-36 (column "reason"); "tirelab explain" lists them`;
    return { wrong };
  }
  if (approver === null) {
    return { wrong: `${found} and nobody's approval, expected who approved it (column "approver")` };
  }
  return { specimen: replaces, reason: entry.code, approver };
}
