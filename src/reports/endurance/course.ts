import { counted, significant } from '../../quantity/format.ts';
import type {
  EnduranceResult,
  NightEntry,
  SignEntry,
  StripEntry,
  StripState,
} from '../../result/endurance.ts';
import { clean, named, type Page, paragraph } from '../text/page.ts';

/** Marks of a strip: what was outside must catch the eye, what was within must not. */
const MARKS: Readonly<Record<'unicode' | 'ascii', Readonly<Record<StripState, string>>>> = {
  unicode: { within: '─', below: '▼', above: '▲', both: '◆', missing: '?', standing: '·', nothing: ' ' },
  ascii: { within: '-', below: 'v', above: '^', both: 'X', missing: '?', standing: '.', nothing: ' ' },
};

/** The course of each channel that has limits, as a line of characters with its set values and what was outside. */
export function strips(page: Page, { strips: all }: EnduranceResult): string[] {
  const first = all[0];
  if (!first) return [];
  const marks = MARKS[page.unicode ? 'unicode' : 'ascii'];
  const lines = all.flatMap((strip) => [
    ...paragraph(page, `${strip.channel}: ${limitsOf(strip)}; ${outsideOf(strip)}`, 2, 4),
    `    |${strip.cells.map((state) => painted(page, marks[state], state)).join('')}|`,
  ]);
  const legend = [
    `one character is ${counted(first.minutesPerCell, 'minute')}: ${marks.within} within`,
    `${marks.above} above`,
    `${marks.below} below`,
    `${marks.both} both`,
    `${marks.standing} standing`,
    `${marks.missing} no value`,
  ];
  return [...lines, '', ...paragraph(page, legend.join(', '), 2, 4)];
}

function limitsOf({ limits }: StripEntry): string {
  const [first = '', ...later] = limits.map((text) => named(text));
  if (later.length < 3) return [first, ...later].join(', then ');
  return `${first}, then ${later[0]}, and ${later.length - 1} more`;
}

function outsideOf({ outside, min, max, unit }: StripEntry): string {
  const ends = min === null || max === null ? 'no value' : `${digits(min)} to ${digits(max)} ${unit}`;
  return outside === 0 ? `never outside (${ends})` : `${outside.toFixed(3)} km outside (${ends})`;
}

function painted(page: Page, mark: string, state: StripState): string {
  if (state === 'below' || state === 'above' || state === 'both') return page.ink.red(mark);
  return state === 'within' ? mark : page.ink.dim(mark);
}

/** Signs of failure: where to look, and what they are not. */
export function signs(page: Page, { signs: { count, listed } }: EnduranceResult): string[] {
  if (count === 0) return [];
  const lines = listed.flatMap((sign) => paragraph(page, `- ${told(sign)}`, 2, 4));
  const beyond = count > listed.length ? paragraph(page, `- and ${count - listed.length} more`, 2, 4) : [];
  const caution =
    'Candidates for a person to look at: none of them is taken for a failure. Inspections and events say what happened.';
  return [...lines, ...beyond, ...paragraph(page, caution, 2, 2)];
}

function told({ sign, unit, file, line, time, distance, before, after, minutes }: SignEntry): string {
  const when = typeof time === 'string' ? time.replace(/\.\d+Z$/u, 'Z') : `${time} s from the start`;
  return (
    `${sign} at ${distance.toFixed(1)} km: ${digits(before)} to ${digits(after)} ${unit}, for ${counted(minutes, 'minute')}, ` +
    `${when}, ${named(file)}:${line}`
  );
}

/** What happened by night: quiet nights in one sentence, the others each with what began in it. */
export function nights(page: Page, { nights: all }: EnduranceResult): string[] {
  if (all.length === 0) return [];
  const loud = all.filter(({ alarms }) => alarms.length > 0);
  const quiet = all.length - loud.length;
  const run = all.reduce((sum, { distance }) => sum + distance, 0);
  const sum = `${counted(all.length, 'night')} (22 to 6 h by the clock of the log), ${run.toFixed(1)} km; ${
    quiet === all.length ? 'nothing began in any of them' : `${loud.length} with alarms`
  }.`;
  return [...paragraph(page, sum, 2, 2), ...loud.flatMap((night) => nightLines(page, night))];
}

function nightLines(page: Page, { day, distance, stood, alarms }: NightEntry): string[] {
  const stop = stood === 0 ? '' : `, stood ${(stood / 3600).toFixed(1)} h`;
  return [
    ...paragraph(page, `night of ${day}: ${distance.toFixed(1)} km${stop}`, 2, 4),
    ...alarms.flatMap(({ what, count, clock, file, line }) =>
      paragraph(
        page,
        `${clock}  ${clean(page, what)}${count > 1 ? `, ${count} times` : ''}, ${named(file)}:${line}`,
        4,
        11,
      ),
    ),
  ];
}

function digits(value: number): string {
  return significant(value, 4);
}
