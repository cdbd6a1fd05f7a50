// Comparisons and simulations as reports, made from real ones: plain, refused, and hostile in every text.
import { compare } from '../../src/jobs/compare.ts';
import { simulate } from '../../src/jobs/simulate.ts';
import { comparisonReport } from '../../src/reports/comparison/report.ts';
import type { ReportDocument } from '../../src/reports/document/blocks.ts';
import { simulationReport } from '../../src/reports/simulation/report.ts';
import type { Language } from '../../src/reports/words/language.ts';
import { runInline } from '../../src/simulation/blocks.ts';
import { hostile } from './reported.ts';

const RUNS = ['demo', 'demo-fail', 'demo-undecided'].map((name) => `fixtures/${name}/run.yaml`);
const despite = new Map([
  ['day', 'both in one week'],
  ['mass', 'follows the cloth'],
]);
const compared = await compare(RUNS, { despite });
const refused = await compare(RUNS.slice(0, 2), { despite: new Map() });

const simulated = (medians: string | null) =>
  simulate(
    {
      protocol: 'protocols/pinch-up-down.yaml',
      rig: null,
      specification: 'shared/specifications/trail-casing.yaml',
      strength: {
        median: medians === null ? '48 J' : null,
        medians,
        spread: '4 J',
        law: null,
        between: null,
        damage: null,
        anyOffset: false,
      },
      tests: 40,
      seed: 1,
      wanted: { withIntervals: true, specimenEffect: false },
    },
    runInline,
    () => {},
  );
const curve = await simulated('36 J..60 J/5');
const point = await simulated(null);

type Study = (language: Language) => ReportDocument;
const of =
  (result: typeof compared): Study =>
  (language) =>
    comparisonReport(result, language, '0.1.0');
const about =
  (result: typeof curve): Study =>
  (language) =>
    simulationReport(result, language, '0.1.0');

export const studies: Readonly<Record<string, Study>> = {
  'a comparison': of(compared),
  'a refused comparison': of(refused),
  'a hostile comparison': of(hostile(compared)),
  'a simulation over medians': about(curve),
  'a simulation of one median': about(point),
  'a hostile simulation': about(hostile(curve)),
};
