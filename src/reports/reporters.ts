import type { ImpactResult } from '../result/analysis.ts';
import { analysisDocument } from './json.ts';
import { analysisText } from './text/analysis.ts';
import type { TextOptions } from './text/page.ts';

/** A reporter turns a result into a text; it prints nothing and reads nothing but its arguments. */
export type Reporter = (result: ImpactResult, options: TextOptions) => string;

/** The reporters by the name that `--format` gives them. */
export const reporters = {
  text: analysisText,
  json: (result, { version }) => analysisDocument(result, version),
} as const satisfies Readonly<Record<string, Reporter>>;
