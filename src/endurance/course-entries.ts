import type { NightEntry, SignEntry, StripEntry, StripState } from '../result/endurance.ts';
import { SAMPLE_UNITS, valueOfSteps } from './channel-unit.ts';
import type { DrumPass } from './drum-pass.ts';
import { addSums, emptySums } from './frame.ts';
import { heldQuantity } from './plan.ts';
import { STRIP } from './strips.ts';
import { kilometres } from './summary.ts';

const MINUTE = 60_000;
/** Times before it are counted from a start that nobody stated. */
const DATED = Date.UTC(1990, 0);

/** The signs of failure that a log shows, in its order; none without a log. */
export function signEntries(pass: DrumPass | null): { count: number; listed: readonly SignEntry[] } {
  if (pass === null) return { count: 0, listed: [] };
  const { ledger, plan, logs } = pass;
  const listed = ledger.signs.listed.map(
    ({ kind, channel, file, line, time, distance, before, after, minutes }): SignEntry => ({
      sign: kind,
      channel,
      unit: SAMPLE_UNITS.get(channel)!,
      file: logs[file]!.path,
      line,
      time: time < DATED ? time / 1000 : new Date(time).toISOString(),
      distance: kilometres(distance, plan),
      before,
      after,
      minutes,
    }),
  );
  return { count: ledger.signs.count, listed };
}

/** The course of every channel that the schedule limits. */
export function stripEntries(pass: DrumPass | null): readonly StripEntry[] {
  if (pass === null) return [];
  const { ledger, plan, schedule } = pass;
  const { cells, minutesPerCell } = ledger.strips;
  return plan.channels.flatMap((channel, c): StripEntry[] => {
    const limits = schedule.flatMap((block) => heldQuantity(block, channel.name)?.text ?? []);
    if (limits.length === 0) return [];
    const sums = emptySums();
    for (const block of ledger.blocks) addSums(sums, block.channels[c]!.sums);
    const value = (steps: number) => (sums.count === 0 ? null : valueOfSteps(steps, channel));
    const outside = ledger.blocks.reduce((sum, block) => sum + block.channels[c]!.outsideDistance, 0);
    return [
      {
        channel: channel.name,
        limits: limits.filter((text, i) => text !== limits[i - 1]),
        outside: kilometres(outside, plan),
        min: value(sums.min),
        max: value(sums.max),
        unit: SAMPLE_UNITS.get(channel.name)!,
        minutesPerCell,
        cells: cells[c]!.map(stateOf),
      },
    ];
  });
}

/** What went wrong must not hide behind what went well beside it. */
function stateOf(bits: number): StripState {
  const { within, below, above, missing, standing } = STRIP;
  if ((bits & below) !== 0 && (bits & above) !== 0) return 'both';
  if ((bits & below) !== 0) return 'below';
  if ((bits & above) !== 0) return 'above';
  if ((bits & within) !== 0) return 'within';
  if ((bits & missing) !== 0) return 'missing';
  return (bits & standing) !== 0 ? 'standing' : 'nothing';
}

/** The nights of the test; none where nothing tells the zone of the clock. */
export function nightEntries(pass: DrumPass | null): readonly NightEntry[] {
  if (pass === null) return [];
  const { ledger, plan, logs } = pass;
  const { zone, nights } = ledger.nightWatch;
  const clock = (time: number) => new Date(time + zone!.offsetAt(time) * MINUTE).toISOString();
  return nights.map(({ from, distance, stood, alarms }) => ({
    day: clock(from).slice(0, 10),
    distance: kilometres(distance, plan),
    stood: stood / 1000,
    alarms: alarms.map(({ what, count, file, line, time }) => ({
      what,
      count,
      clock: clock(time).slice(11, 16),
      file: logs[file]!.path,
      line,
    })),
  }));
}
