import type { ImpactResult } from '../result/analysis.ts';
import type { TextOptions } from './text/page.ts';

/** A reporter turns a result into a text; it prints nothing and reads nothing but its arguments. */
export type Reporter = (result: ImpactResult, options: TextOptions) => string;

/** The reporters by the name that `--format` gives them; each is loaded when it is asked for. */
export const reporters = {
  text: async () => (await import('./text/analysis.ts')).analysisText,
  json: async () => {
    const { analysisDocument } = await import('./json.ts');
    return (result, { version }) => analysisDocument(result, version);
  },
} as const satisfies Readonly<Record<string, () => Promise<Reporter>>>;

export type ReporterName = keyof typeof reporters;
