import { percent, plain } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { SimulationResult } from '../../result/simulation.ts';
import { type Page, pageOf, paragraph, section, type TextOptions, versioned } from '../text/page.ts';
import { accuracy } from './accuracy.ts';
import { characteristic } from './characteristic.ts';
import { joule } from './numbers.ts';
import { chances } from './verdicts.ts';

/** A simulation for people: what was assumed, then what the protocol makes of it, each number with its error. */
export function simulationText(result: SimulationResult, options: TextOptions): string {
  const page = pageOf(options);
  const [only, ...others] = result.points;
  const single = others.length === 0 ? only! : null;
  const lines = [
    ...paragraph(page, title(result), 0).map((line) => page.ink.bold(line)),
    ...section(page, 'Assumed', assumed(page, result, options.version)),
    ...(single
      ? accuracy(page, single)
      : characteristic(page, result.points, result.specification?.medianLimit ?? null)),
    ...(single ? chances(page, single) : []),
    ...section(
      page,
      'Notes',
      result.notes.flatMap((note) => paragraph(page, `- ${note}`, 2, 4)),
    ),
    ...section(
      page,
      'Cautions',
      CAUTIONS.flatMap((text) => paragraph(page, `- ${text}`, 2, 4)),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function title({ protocol, tests, points }: SimulationResult): string {
  const at =
    points.length === 1
      ? `at a true median of ${joule(points[0]!.median)}`
      : `at each of ${points.length} true medians`;
  return `${counted(tests, 'simulated test')} of ${versioned(protocol.id, protocol.version)} (${protocol.method}) ${at}.`;
}

function assumed(page: Page, result: SimulationResult, version: string): string[] {
  const { law, spread, spreadUnit, between, damage, anyOffset } = result.assumed;
  const of = spreadUnit === 'J' ? joule(spread) : `${percent(spread)} (of ln E)`;
  const tyres = [
    `${law} strength with a spread of ${of}`,
    ...(between > 0 ? [`${percent(between)} of its variance between tyres`] : []),
    ...(damage > 0 ? [`${percent(damage)} lost by each hit survived`] : []),
    ...(anyOffset ? ['the median moved by up to half a step in each test'] : []),
  ];
  const { mass, gravity, gravityFrom } = result.energy;
  const energy = `m·g·h${mass === null ? '' : `; m = ${plain(mass)} kg`}; g = ${plain(Number(gravity.toFixed(5)))} m/s² (${gravityFrom})`;
  return [
    ...paragraph(page, `tyres: ${tyres.join(', ')}`, 2, 4),
    ...paragraph(page, `energy: ${energy}`, 2, 4),
    ...paragraph(
      page,
      `fitted: ${result.protocol.distribution} strength; seed ${result.seed}; tirelab ${version}`,
      2,
      4,
    ),
    ...(result.defaults.length > 0
      ? paragraph(page, `taken for want of a statement: ${result.defaults.join('; ')}`, 2, 4)
      : []),
  ];
}

const CAUTIONS = [
  'What is behind ± is one standard error of this simulation (Monte Carlo error); more tests make it smaller, not the test better.',
  'The tyres are invented: a real construction may follow another law, and its spread is not known beforehand.',
];
