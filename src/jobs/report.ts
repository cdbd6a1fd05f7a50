import { follow } from '../documents/follow.ts';
import { loadRun } from '../documents/load.ts';
import { readPhoto } from '../documents/photo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Photo, ReportedTest } from '../result/report.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { documentsOf } from './documents-of.ts';
import { readImpactTest } from './impact-test.ts';
import { replayTest } from './replay-test.ts';
import { conditionsOf } from './reporting/conditions.ts';
import { exclusionsOf } from './reporting/exclusions.ts';
import { daysOf, methodOf } from './reporting/method.ts';
import { sampleOf } from './reporting/sample.ts';

/**
 * All that a report says of runs: each analysed as `analyze` does it, with what only a report needs beside: response
 * curves, the strength of each tyre, conditions, exclusions, and the pictures that the run names.
 *
 * @param paths run files.
 * @throws InputError with the problems of all runs; nothing is reported then.
 */
export async function reportedTests(paths: readonly string[]): Promise<ReportedTest[]> {
  const tests: ReportedTest[] = [];
  const problems: Problem[] = [];
  for (const path of paths) {
    try {
      tests.push(await reportedTest(path));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  return tests;
}

async function reportedTest(path: string): Promise<ReportedTest> {
  const run = loadRun({ path });
  const photos = photosOf(run);
  const test = await readImpactTest(documentsOf({ kind: 'run', path }, NOTHING));
  const result = analyzeImpact(test);
  const { drops, scale, replayed } = replayTest(test);
  return {
    title: run.title,
    result,
    request: run.request,
    method: methodOf(test.protocol),
    constructions: test.constructions.map(
      ({ id, revision, title, category, size, parent, declared, factors }) => ({
        id,
        revision,
        title,
        category,
        size,
        parent,
        declared,
        factors,
      }),
    ),
    conditions: conditionsOf(test, drops),
    samples: replayed.samples.map((sample) => sampleOf(sample, test, scale)),
    exclusions: exclusionsOf(replayed),
    photos,
    days: daysOf(drops),
  };
}

/** What `-` would stand for: a run file reads none. */
const NOTHING: AsyncIterable<Uint8Array> = { [Symbol.asyncIterator]: async function* () {} };

function photosOf(run: ReturnType<typeof loadRun>): Photo[] {
  const problems: Problem[] = [];
  const photos = run.photos.flatMap(({ file, caption }, i): Photo[] => {
    const found = follow(run.source, file, ['photos', i, 'file']);
    if (!found.ok) {
      problems.push(found.problem);
      return [];
    }
    try {
      return [readPhoto(found.value, caption)];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
      return [];
    }
  });
  if (problems.length > 0) throw new InputError(problems);
  return photos;
}
