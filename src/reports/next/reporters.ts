import type { NextResult } from '../../result/next.ts';
import type { TextOptions } from '../text/page.ts';

/** Turns an advice into a text; it prints nothing and reads nothing but its arguments. */
export type NextReporter = (result: NextResult, options: TextOptions) => string;

/** The reporters by the name that `--format` gives them. */
export const nextReporters = {
  text: async () => (await import('./text.ts')).nextText,
  json: async () => {
    const { nextDocument } = await import('./json.ts');
    return (result, { version }) => nextDocument(result, version);
  },
} as const satisfies Readonly<Record<string, () => Promise<NextReporter>>>;

export type NextFormat = keyof typeof nextReporters;
