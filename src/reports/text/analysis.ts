import type { ImpactResult } from '../../result/analysis.ts';
import { cautions } from './cautions.ts';
import { chart } from './chart.ts';
import { criteria, verdictLine } from './criteria.ts';
import { deviations } from './deviations.ts';
import { estimates } from './estimates.ts';
import { goodness } from './goodness.ts';
import { headline } from './headline.ts';
import { inputs } from './inputs.ts';
import { notes } from './notes.ts';
import { pageOf, section, type TextOptions, versioned } from './page.ts';
import { regression } from './regression.ts';
import { massCorrections, rigs } from './rigs.ts';
import { amendments, provisional, retest, samples } from './session.ts';
import { subject } from './subject.ts';
import { uncertainty } from './uncertainty.ts';

/**
 * A drop test's result for people: the finding first, then what it was found on, the picture, what went wrong, the
 * numbers, the judgement, and what must be kept in mind. No line is wider than the page; however long the log was,
 * the text stays short.
 */
export function analysisText(result: ImpactResult, options: TextOptions): string {
  const page = pageOf(options);
  const by = result.specification;
  const judgedBy = by === null ? 'Criteria' : `Criteria of ${versioned(by.id, by.version)}`;
  const lines = [
    ...headline(page, result),
    ...provisional(page, result),
    ...section(page, 'Test', subject(page, result, options.version)),
    ...section(page, 'Samples', samples(page, result)),
    ...section(page, 'Rigs', rigs(page, result)),
    ...section(page, 'Masses corrected', massCorrections(page, result)),
    ...section(page, 'Retest', retest(page, result)),
    ...section(page, 'Drops, level by level', chart(page, result)),
    ...section(page, 'Deviations from the protocol', deviations(page, result)),
    ...section(page, 'Amended since the log was written', amendments(page, result)),
    ...section(page, 'Notes', notes(page, result)),
    ...section(page, 'Estimates', estimates(page, result)),
    ...section(page, 'Uncertainty of the rig', uncertainty(page, result)),
    ...section(page, 'Effects of conditions', regression(page, result)),
    ...section(page, 'Goodness of fit', goodness(page, result)),
    ...section(page, judgedBy, criteria(page, result)),
    ...verdictLine(page, result),
    ...section(page, 'Cautions', cautions(page, result)),
    ...section(page, 'Inputs', inputs(page, result)),
  ];
  return `${lines.join('\n')}\n`;
}
