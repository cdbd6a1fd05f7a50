import type { EnduranceProtocol, Rig } from '../../documents/kinds.ts';
import { lifeBand } from '../../endurance/life/life-band.ts';
import { nightsBetween } from '../../endurance/nights.ts';
import { Timelines } from '../../endurance/timelines.ts';
import { wearLines } from '../../endurance/wear/wear-lines.ts';
import { wearOf } from '../../endurance/wear/wear-readings.ts';
import { type Zone, zoneOf } from '../../logs/time/zone.ts';
import { writtenOffset } from '../../logs/written-offset.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import type { ReportedDrum } from '../../result/report.ts';
import { analyzeEndurance } from '../analyze-endurance.ts';
import type { Documents } from '../documents-of.ts';
import type { DrumReading } from '../drum-run.ts';
import { readEnduranceTest } from '../endurance-test.ts';

/** What a report says of a drum test beside its result: the minutes of the log, the band of the lives, the tread. */
export async function drumPart(
  documents: Documents & { readonly protocol: EnduranceProtocol },
  reading: DrumReading,
): Promise<Pick<ReportedDrum, 'result' | 'timelines' | 'nights' | 'band' | 'wear' | 'days'>> {
  const { protocol } = documents;
  const timelines = new Timelines(protocol.schedule);
  const test = await readEnduranceTest(documents, {
    ...reading,
    onFrame: (frame, plan) => timelines.take(frame, plan),
  });
  const result = analyzeEndurance(test);
  const wear = wearOf(test.inspections?.records ?? []);
  return {
    result,
    timelines: timelines.all(),
    nights: await nightsOf(documents, test.drum?.summary ?? null),
    band: lifeBand(observationsOf(result), protocol.distribution, protocol.confidence),
    wear: {
      readings: wear.flatMap(({ specimen, readings }) =>
        readings.map(({ distance, depth }) => ({ specimen, distance, depth })),
      ),
      lines: wearLines(wear, protocol.wearLimit ?? null, protocol.confidence),
      limit: protocol.wearLimit ?? null,
    },
    days: daysOf(test.drum?.summary ?? null),
  };
}

function observationsOf({ lives }: EnduranceResult) {
  return lives.map(({ lower, upper }) => ({ lower: lower ?? 0, upper: upper ?? Infinity, count: 1 }));
}

interface Ends {
  readonly firstTime: number;
  readonly lastTime: number;
}

/** The nights of the laboratory, where the rig's profile or the log itself tells the zone of its clock. */
async function nightsOf({ logs }: Documents, ends: Ends | null): Promise<ReportedDrum['nights']> {
  if (ends === null || !isDated(ends)) return [];
  for (const { source, rig } of logs) {
    const zone = zoneOfRig(rig) ?? zoneOf((await writtenOffset(source)) ?? '');
    if (zone !== null) return nightsBetween(ends.firstTime, ends.lastTime, zone);
  }
  return [];
}

function zoneOfRig(rig: Rig | null): Zone | null {
  const rule = rig?.export?.time ?? null;
  return rule !== null && 'zone' in rule ? rule.zone : null;
}

/** Days in UTC; null for a log that counts from its start. */
function daysOf(ends: Ends | null): ReportedDrum['days'] {
  if (ends === null || !isDated(ends)) return null;
  const day = (time: number) => new Date(time).toISOString().slice(0, 10);
  return { first: day(ends.firstTime), last: day(ends.lastTime) };
}

/** Before 1990 no drum wrote a file: such times are counted from the start. */
function isDated({ firstTime }: Ends): boolean {
  return firstTime >= Date.UTC(1990, 0);
}
