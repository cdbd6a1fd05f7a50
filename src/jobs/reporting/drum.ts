import type { EnduranceProtocol } from '../../documents/kinds.ts';
import { lifeBand } from '../../endurance/life/life-band.ts';
import { Timelines } from '../../endurance/timelines.ts';
import { wearOf } from '../../endurance/wear/wear-readings.ts';
import type { EnduranceResult } from '../../result/endurance.ts';
import type { ReportedDrum } from '../../result/report.ts';
import { analyzeEndurance } from '../analyze-endurance.ts';
import type { Documents } from '../documents-of.ts';
import { type DrumReading, readEnduranceTest } from '../endurance-test.ts';

/** What a report says of a drum test beside its result: the minutes of the log, the band of the lives, the tread. */
export async function drumPart(
  documents: Documents & { readonly protocol: EnduranceProtocol },
  reading: DrumReading,
): Promise<Pick<ReportedDrum, 'result' | 'timelines' | 'band' | 'wear' | 'days'>> {
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
    band: lifeBand(observationsOf(result), protocol.distribution, protocol.confidence),
    wear: {
      readings: wear.flatMap(({ specimen, readings }) =>
        readings.map(({ distance, depth }) => ({ specimen, distance, depth })),
      ),
      limit: protocol.wearLimit ?? null,
    },
    days: daysOf(test.drum?.summary ?? null),
  };
}

function observationsOf({ lives }: EnduranceResult) {
  return lives.map(({ lower, upper }) => ({ lower: lower ?? 0, upper: upper ?? Infinity, count: 1 }));
}

/** Days in UTC; null for a log that counts from its start. */
function daysOf(
  summary: { readonly firstTime: number; readonly lastTime: number } | null,
): ReportedDrum['days'] {
  // Before 1990 no drum wrote a file: such times are counted from the start.
  if (summary === null || summary.firstTime < Date.UTC(1990, 0)) return null;
  const day = (time: number) => new Date(time).toISOString().slice(0, 10);
  return { first: day(summary.firstTime), last: day(summary.lastTime) };
}
