import type { SimulatedPoint } from '../../result/simulation.ts';
import { type Page, paragraph } from '../text/page.ts';
import { joule } from './numbers.ts';

/** Lines of the chart: 100 % to 0 in steps of ten. */
const STEPS = 10;
/** `100 % ` before the chart. */
const LEFT = 8;
/** Wider than this the curves grow no clearer. */
const WIDEST = 80;

const VERDICTS = ['inconclusive', 'fail', 'pass'] as const;

/** Chances of the verdicts over the true median as characters, in the width of the page: the operating characteristic. */
export function chart(page: Page, points: readonly SimulatedPoint[], limit: number | null): string[] {
  const known = points.filter(({ verdicts }) => verdicts !== null).toSorted((a, b) => a.median - b.median);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined || first.median === last.median) return [];
  const room = Math.min(WIDEST, page.width) - LEFT;
  const span = last.median - first.median;
  const cells = Array.from({ length: STEPS + 1 }, () => Array<string>(room).fill(' '));
  const limitAt = limit === null ? null : Math.round(((limit - first.median) / span) * (room - 1));
  const isInside = limitAt !== null && limitAt >= 0 && limitAt < room;
  const bar = page.unicode ? '┊' : ':';
  if (isInside) for (const row of cells) row[limitAt] = bar;
  const { failed, survived, leftOut } = page.marks;
  const marks = { pass: failed, fail: leftOut, inconclusive: survived };
  for (const verdict of VERDICTS) {
    for (let column = 0; column < room; column += 1) {
      const chance = chanceAt(known, verdict, first.median + (span * column) / (room - 1));
      cells[STEPS - Math.round(chance * STEPS)]![column] = marks[verdict];
    }
  }
  const label = (row: number) => (row % 5 === 0 ? `${100 - 10 * row} % ` : '');
  const rows = cells.map((row, i) => `${page.ink.dim(label(i).padStart(LEFT))}${row.join('').trimEnd()}`);
  const ends = [joule(first.median), joule(last.median)];
  const axis = `${ends[0]}${ends[1]!.padStart(Math.max(1, room - ends[0]!.length))}`;
  const limitWords = isInside ? `; ${bar} limit ${joule(limit!)}` : '';
  return [
    ...rows,
    `${' '.repeat(LEFT)}${page.ink.dim((page.unicode ? '─' : '-').repeat(room))}`,
    `${' '.repeat(LEFT)}${axis}`,
    '',
    ...paragraph(
      page,
      `${marks.pass} pass, ${marks.fail} fail, ${marks.inconclusive} undecided: chance over the true median${limitWords}`,
    ),
    '',
  ];
}

/** Between two points as if the chance ran straight. */
function chanceAt(
  points: readonly SimulatedPoint[],
  verdict: (typeof VERDICTS)[number],
  median: number,
): number {
  const of = (point: SimulatedPoint) => point.verdicts?.overall[verdict]?.value ?? 0;
  const next = points.findIndex((point) => point.median >= median);
  if (next <= 0) return of(next === 0 ? points[0]! : points.at(-1)!);
  const [before, after] = [points[next - 1]!, points[next]!];
  return of(before) + ((median - before.median) / (after.median - before.median)) * (of(after) - of(before));
}
