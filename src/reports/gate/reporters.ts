import type { GateResult } from '../../result/gate.ts';
import type { TextOptions } from '../text/page.ts';

export type GateReporter = (result: GateResult, options: TextOptions) => string;

/** The reporters of the gate by the name that `--format` gives them. */
export const gateReporters = {
  text: async () => (await import('./text.ts')).gateText,
  json: async () => {
    const { gateDocument } = await import('./json.ts');
    return (result, { version }) => gateDocument(result, version);
  },
  junit: async () => (await import('./junit.ts')).gateJunit,
  markdown: async () => (await import('./markdown.ts')).gateMarkdown,
  github: async () => (await import('./annotations.ts')).gateAnnotations,
  codequality: async () => (await import('./annotations.ts')).gateCodeQuality,
} as const satisfies Readonly<Record<string, () => Promise<GateReporter>>>;
