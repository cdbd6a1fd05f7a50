import type { PlanResult } from '../../result/plan.ts';
import type { TextOptions } from '../text/page.ts';

/** Turns a plan into a text; it prints nothing and reads nothing but its arguments. */
export type PlanReporter = (result: PlanResult, options: TextOptions) => string;

/** The reporters by the name that `--format` gives them; csv is the run sheet. */
export const planReporters = {
  text: async () => (await import('./text.ts')).planText,
  json: async () => {
    const { planDocument } = await import('./json.ts');
    return (result, { version }) => planDocument(result, version);
  },
  csv: async () => {
    const { sheetCsv } = await import('./sheet.ts');
    return (result) => sheetCsv(result.sheet);
  },
} as const satisfies Readonly<Record<string, () => Promise<PlanReporter>>>;

export type PlanFormat = keyof typeof planReporters;
