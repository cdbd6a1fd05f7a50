import type { EnduranceResult, LifeEntry } from '../../result/endurance.ts';
import { clean, named, type Page, paragraph } from '../text/page.ts';
import { table } from '../text/table.ts';

/** Tyres beyond this many are counted only; the JSON has them all. */
const MOST = 40;
/** Columns of the longest bar. */
const BAR = 24;

/** One bar a tyre, the shortest life first: how far it is known to have run whole, and where it failed. */
export function lives(page: Page, { lives: all }: EnduranceResult): string[] {
  if (all.length === 0) return [];
  const sorted = all.toSorted((a, b) => endOf(a) - endOf(b));
  const longest = Math.max(...sorted.map(endOf));
  const rows = sorted
    .slice(0, MOST)
    .map((life) => [
      named(life.specimen),
      bar(page, life, longest),
      lifeText(life),
      life.cause === null ? '' : named(life.cause),
    ]);
  const columns = [
    { head: 'tyre', align: 'left', least: 6 },
    { head: '', align: 'left' },
    { head: 'km', align: 'right' },
    { head: 'cause', align: 'left', least: 8 },
  ] as const;
  const { failed } = page.marks;
  const legend = `${page.unicode ? '─' : '-'} seen whole, ${page.unicode ? '┄' : '.'} failed somewhere here, ${failed} failed, > taken off unfailed`;
  const rest = sorted.length - MOST;
  return [
    ...table(page, columns, rows),
    ...(rest > 0 ? paragraph(page, `and ${rest} more tyres; --json lists them`) : []),
    '',
    ...paragraph(page, legend),
  ];
}

function endOf({ lower, upper }: LifeEntry): number {
  return upper ?? lower ?? 0;
}

function bar(page: Page, { lower, upper, outcome }: LifeEntry, longest: number): string {
  const columns = (km: number) => (longest === 0 ? 0 : Math.round((km / longest) * BAR));
  const whole = columns(lower ?? 0);
  const end = columns(upper ?? lower ?? 0);
  const [line, gap] = page.unicode ? ['─', '┄'] : ['-', '.'];
  const mark = outcome === 'failed' ? page.marks.failed : '>';
  return clean(page, line.repeat(whole) + gap.repeat(Math.max(0, end - whole)) + mark, 2 * BAR);
}

function lifeText({ lower, upper, outcome }: LifeEntry): string {
  const say = (km: number) => String(Number(km.toFixed(1)));
  if (outcome === 'suspended') return `> ${say(lower ?? 0)}`;
  if (lower === null) return `up to ${say(upper!)}`;
  return lower === upper ? say(lower) : `${say(lower)} to ${say(upper!)}`;
}
