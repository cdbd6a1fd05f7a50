import { percent } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import { criteria, verdictLine } from '../text/criteria.ts';
import { deviations } from '../text/deviations.ts';
import { estimates } from '../text/estimates.ts';
import { inputs } from '../text/inputs.ts';
import { listed, methodName, quantityName, verdictWord } from '../text/names.ts';
import { notes } from '../text/notes.ts';
import { estimateText, intervalText } from '../text/numbers.ts';
import {
  inVerdictColour,
  named,
  type Page,
  pageOf,
  paragraph,
  section,
  sentence,
  type TextOptions,
  versioned,
} from '../text/page.ts';
import { blocks } from './blocks.ts';
import { nights, signs, strips } from './course.ts';
import { lives } from './lives.ts';
import { tyresOnDrum } from './tyres.ts';

/** A drum test's result for people: the finding first, then ledger and blocks, lives, numbers, judgement, cautions. */
export function enduranceText(result: EnduranceResult, options: TextOptions): string {
  const page = pageOf(options);
  const by = result.specification;
  const judgedBy = by === null ? 'Criteria' : `Criteria of ${versioned(by.id, by.version)}`;
  const lines = [
    ...headline(page, result),
    ...section(page, 'Test', subject(page, result, options.version)),
    ...section(page, 'Distance on the drum', blocks(page, result)),
    ...section(page, 'Tyres on the drum, km', tyresOnDrum(page, result)),
    ...section(page, 'Course of the test', strips(page, result)),
    ...section(page, 'Nights', nights(page, result)),
    ...section(page, 'Signs of failure in the log', signs(page, result)),
    ...section(page, 'Lives', lives(page, result)),
    ...section(page, 'Deviations from the protocol', deviations(page, result)),
    ...section(page, 'Notes', notes(page, result)),
    ...section(page, 'Estimates', estimates(page, { estimates: told(result) }, basisOf)),
    ...section(page, judgedBy, criteria(page, result)),
    ...verdictLine(page, result),
    ...section(page, 'Cautions', cautions(page, result)),
    ...section(page, 'Inputs', inputs(page, result)),
  ];
  return `${lines.join('\n')}\n`;
}

/** Without a tyre there is nothing to tell: the JSON says so of each quantity, the headline once. */
function told({ estimates: all }: EnduranceResult): EnduranceResult['estimates'] {
  return all.filter(({ specimens }) => specimens > 0);
}

function headline(page: Page, result: EnduranceResult): string[] {
  const { verdict, specification } = result;
  const lines = paragraph(page, finding(result), 0).map((line) => page.ink.bold(line));
  if (verdict === null) return lines;
  const against = specification === null ? '' : ` by ${versioned(specification.id, specification.version)}`;
  const judged = paragraph(page, `Verdict${against}: ${verdictWord(verdict)}.`, 0);
  return [...lines, ...judged.map((line) => inVerdictColour(page, verdict, line))];
}

function finding({ estimates: all, sample, distance, conformance }: EnduranceResult): string {
  if (sample.specimens === 0) {
    const run =
      distance.logged === null
        ? ''
        : `${distance.logged.toFixed(1)} km logged, ${distance.atCondition!.toFixed(1)} km of them at the set condition; `;
    return sentence(`${run}no outcome of a tyre was given, so nothing is said of lives`);
  }
  const evidence = `from ${counted(sample.specimens, 'tyre')}, of which ${sample.failures} failed`;
  const broken = conformance.status === 'invalid' ? ' The protocol was broken: not to be relied on.' : '';
  const first = all[0]!;
  const { interval } = first;
  if (interval === null)
    return `${sentence(`no value for the ${quantityName(first)}: ${first.why ?? ''}`)} ${sentence(evidence)}${broken}`;
  const bound = `${percent(interval.level)} ${interval.sides === 1 ? 'bound' : 'interval'} ${intervalText(first)}`;
  if (first.value !== null) {
    return `${sentence(`${quantityName(first)} ${estimateText(first)}, ${bound}, ${evidence}`)}${broken}`;
  }
  return `${sentence(`no single value for the ${quantityName(first)}: ${first.why ?? ''}`)} ${sentence(`${bound}, ${evidence}`)}${broken}`;
}

const LABEL = 15;

function subject(page: Page, result: EnduranceResult, version: string): string[] {
  const { run, protocol, rig, constructions, specification, sample } = result;
  const title = protocol.title === null ? '' : ` (${named(protocol.title)})`;
  const rows: [string, string][] = [
    ['run', run === null ? 'none: logs analysed by themselves' : named(run)],
    ['protocol', `${versioned(protocol.id, protocol.version)}, endurance on the drum${title}`],
    ['rig', rig === null ? 'not stated' : versioned(rig.id, rig.config)],
    [
      constructions.length > 1 ? 'constructions' : 'construction',
      constructions.length === 0
        ? 'not stated'
        : listed(
            constructions.map(({ id, revision }) => versioned(id, revision)),
            6,
          ),
    ],
    ['specification', specification === null ? 'none' : versioned(specification.id, specification.version)],
    [
      'sample',
      sample.specimens === 0
        ? 'no outcomes'
        : `${counted(sample.specimens, 'tyre')}: ${sample.failures} failed, ${sample.suspensions} taken off unfailed`,
    ],
  ];
  const assumed = result.defaults.filter((text) => text.trim() !== '');
  if (assumed.length > 0) rows.push(['assumed', assumed.join('; ')]);
  rows.push(['evaluated by', `tirelab ${version}`]);
  return rows.flatMap(([label, text]) => {
    const [first = '', ...rest] = paragraph(page, text, 2 + LABEL);
    return [`  ${page.ink.dim(label.padEnd(LABEL))}${first.trimStart()}`, ...rest];
  });
}

/** What all entries of a group of estimates share. */
function basisOf({
  method,
  distribution,
  interval,
  variant,
  specimens,
}: EnduranceResult['estimates'][number]): string {
  const law = distribution === undefined ? '' : `, ${distribution} life`;
  const choice = variant === undefined ? '' : `, ${named(variant)}`;
  const ends =
    interval === null
      ? ''
      : `, ${methodName(interval.method)} ${interval.sides === 1 ? 'bounds' : 'intervals'}`;
  return `${sentence(methodName(method) + law + ends + choice).slice(0, -1)}; ${counted(specimens, 'tyre')}`;
}

function cautions(page: Page, { sample, verdict, distance }: EnduranceResult): string[] {
  const found: string[] = [];
  if (sample.failures > 0 && sample.failures < 10) {
    found.push(
      `From ${counted(sample.failures, 'failure')} little is known of early lives: the 10 % life and reliabilities beyond the data rest on the assumed law.`,
    );
  }
  if (distance.logged === null && sample.specimens > 0) {
    found.push(
      'No log of the drum was checked: whether the kilometres were run at the set condition is not known.',
    );
  }
  if (verdict !== null) {
    found.push('The verdict is a statement within this lab, unless the lab is accredited for this method.');
  }
  const always = [
    'Kilometres on a drum are not kilometres on the road: the curved drum bends and heats the tyre otherwise, and no factor between the two holds without a calibration in the field.',
    'The result replaces neither ISO 4210, ISO 5775 and local rules nor an accredited test, and does not say that a tyre is safe to sell.',
    'A drum that turns unattended needs a closed, interlocked guard and a trip for pressure, arm height and temperature. Keep clear of an inflated tyre; wait for standstill. tirelab does not know the state of the rig.',
  ];
  return [...found, ...always].flatMap((text) => paragraph(page, `- ${text}`, 2, 4));
}
