import type { SimulationResult } from '../../result/simulation.ts';
import type { TextOptions } from '../text/page.ts';

/** Turns a simulation into a text; it prints nothing and reads nothing but its arguments. */
export type SimulationReporter = (result: SimulationResult, options: TextOptions) => string;

/** The reporters by the name that `--format` gives them. */
export const simulationReporters = {
  text: async () => (await import('./text.ts')).simulationText,
  json: async () => {
    const { simulationDocument } = await import('./json.ts');
    return (result, { version }) => simulationDocument(result, version);
  },
} as const satisfies Readonly<Record<string, () => Promise<SimulationReporter>>>;

export type SimulationFormat = keyof typeof simulationReporters;
