// Invented drum tests as a report is given them, made from one that was read.
import { reportedRuns } from '../../src/jobs/report.ts';
import { isDrum, type ReportedDrum } from '../../src/result/report.ts';
import { hostile } from './reported.ts';

const [read] = await reportedRuns(['fixtures/drum-run/run.yaml']);
if (read === undefined || !isDrum(read)) throw new Error('fixtures/drum-run is no drum test');
export const drum: ReportedDrum = read;

/** Twelve tyres: failures seen, failures between looks, tyres taken off. */
function lives(times: number, isFailed: (place: number) => boolean): ReportedDrum['result']['lives'] {
  return Array.from({ length: 12 }, (_, i) => {
    const upper = (3000 + 480 * i) * times;
    return isFailed(i)
      ? {
          specimen: `T-${i + 1}`,
          line: i + 2,
          outcome: 'failed' as const,
          lower: i % 2 === 0 ? upper : upper - 120 * times,
          upper,
          cause: ['casing', 'tread', null][i % 3] ?? null,
          medianRank: (i + 0.7) / 12.4,
        }
      : {
          specimen: `T-${i + 1}`,
          line: i + 2,
          outcome: 'suspended' as const,
          lower: upper,
          upper: null,
          cause: 'taken off',
          medianRank: null,
        };
  });
}

function withLives(times: number, isFailed: (place: number) => boolean): ReportedDrum {
  const own = lives(times, isFailed);
  const ends = own.map(({ lower, upper }) => upper ?? lower ?? 0);
  const failures = own.filter(({ outcome }) => outcome === 'failed').length;
  return {
    ...drum,
    nights: [{ from: drum.timelines[0]!.minutes[3]!.time, to: drum.timelines[0]!.minutes[9]!.time }],
    timelines: drum.timelines.map((timeline) => ({
      ...timeline,
      minutes: timeline.minutes.map(({ mean, min, max, ...minute }) => ({
        ...minute,
        mean: mean === null ? null : mean * times,
        min: min === null ? null : min * times,
        max: max === null ? null : max * times,
      })),
      schedule: timeline.schedule.map(({ value, lower, upper, ...stretch }) => ({
        ...stretch,
        value: value * times,
        lower: lower === null ? null : lower * times,
        upper: upper === null ? null : upper * times,
      })),
    })),
    band: ends.map((life, i) => ({ life, lower: 0.02 + 0.07 * i, upper: 0.2 + 0.065 * i })),
    wear: {
      ...drum.wear,
      readings: ends.map((distance, i) => ({
        specimen: `T-${1 + (i % 3)}`,
        distance,
        depth: 3 - 0.1 * i,
      })),
    },
    result: { ...drum.result, lives: own, sample: { ...drum.result.sample, specimens: 12, failures } },
  };
}

const empty: ReportedDrum = {
  ...drum,
  constructions: [],
  photos: [],
  timelines: [],
  nights: [],
  band: [],
  wear: { readings: [], lines: [], limit: null },
  days: null,
  result: {
    ...drum.result,
    run: null,
    inputs: [],
    schedule: [],
    lives: [],
    survival: [],
    estimates: [],
    notes: [],
  },
};

export const reportedDrums: Readonly<Record<string, readonly ReportedDrum[]>> = {
  'on the drum': [drum],
  'on the drum with twelve tyres': [withLives(1, (i) => i % 3 !== 2)],
  'on the drum, all taken off': [withLives(1, () => false)],
  'on the drum with huge values': [withLives(1e9, (i) => i % 3 !== 2)],
  'on the drum with tiny values': [withLives(1e-9, (i) => i % 3 !== 2)],
  'on the drum and empty': [empty],
  'on the drum and hostile': [hostile(withLives(1, (i) => i % 3 !== 2))],
};
