import { counted } from '../../quantity/format.ts';
import type { BlockEntry, EnduranceResult, LedgerEntry } from '../../result/endurance.ts';
import { named, type Page, paragraph } from '../text/page.ts';
import { table } from '../text/table.ts';

/** The ledger, block by block and in sum, and how long each channel kept its limits. */
export function blocks(page: Page, { schedule, distance }: EnduranceResult): string[] {
  if (distance.logged === null) {
    return paragraph(
      page,
      `Not checked: no log of the drum was given. The schedule has ${counted(schedule.length, 'block')}.`,
    );
  }
  const rows = schedule.map((block) => [
    named(block.block),
    plannedText(block),
    ...ledger(block.distance),
    time(block),
  ]);
  const columns = [
    { head: 'block', align: 'left', least: 8 },
    { head: 'planned', align: 'right' },
    { head: 'logged', align: 'right' },
    { head: 'at condition', align: 'right' },
    { head: 'excluded', align: 'right' },
    { head: 'unverified', align: 'right' },
    { head: 'hours', align: 'right' },
  ] as const;
  const whole = ['in all, km', '', ...ledger(distance), ''];
  return [
    ...table(page, columns, schedule.length > 1 ? [...rows, whole] : rows),
    ...channels(page, schedule),
  ];
}

function plannedText({ planned: { distance, time: seconds } }: BlockEntry): string {
  if (distance !== null) return distance.toFixed(1);
  return seconds === null ? '' : `${(seconds / 3600).toFixed(1)} h`;
}

function ledger({ logged, atCondition, excluded, unverified }: LedgerEntry): string[] {
  return [logged, atCondition, excluded, unverified].map((km) => (km ?? 0).toFixed(1));
}

function time({ logged }: BlockEntry): string {
  return logged.time === null ? '' : (logged.time / 3600).toFixed(1);
}

/** Share of the time in tolerance, as a bar of ten. */
function channels(page: Page, schedule: readonly BlockEntry[]): string[] {
  const rows = schedule.flatMap(({ block, channels: all }) =>
    all
      .filter(({ inTolerance }) => inTolerance !== null)
      .map(({ channel, unit, inTolerance, mean, min, max }) => [
        named(block),
        channel,
        bar(page, inTolerance!),
        `${(Math.floor(inTolerance! * 10000) / 100).toFixed(2)} %`,
        `${digits(mean)} (${digits(min)} to ${digits(max)}) ${unit}`,
      ]),
  );
  if (rows.length === 0) return [];
  const columns = [
    { head: 'block', align: 'left', least: 8 },
    { head: 'channel', align: 'left', least: 10 },
    { head: 'in tolerance', align: 'left' },
    { head: 'of time', align: 'right' },
    { head: 'mean (ends)', align: 'left', least: 16 },
  ] as const;
  return ['', ...table(page, columns, rows)];
}

function bar(page: Page, share: number): string {
  // A full bar is kept for what was in tolerance throughout.
  const full = Math.floor(share * 10);
  const [on, off] = page.unicode ? ['█', '░'] : ['#', '.'];
  return on.repeat(full) + off.repeat(10 - full);
}

function digits(value: number | null): string {
  return value === null ? '' : String(Number(value.toPrecision(4)));
}
