import { follow } from '../documents/follow.ts';
import type { Construction } from '../documents/kinds.ts';
import { loadRun } from '../documents/load.ts';
import { readPhoto } from '../documents/photo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import type { Photo, ReportedConstruction, ReportedRun } from '../result/report.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { documentsOf } from './documents-of.ts';
import type { DrumReading } from './drum-run.ts';
import { type ImpactTest, readImpactTest } from './impact-test.ts';
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
 * @param reading how the logs of drum tests are read.
 * @throws InputError with the problems of all runs; nothing is reported then.
 */
export async function reportedRuns(
  paths: readonly string[],
  reading: DrumReading = {},
): Promise<ReportedRun[]> {
  const runs: ReportedRun[] = [];
  const problems: Problem[] = [];
  for (const path of paths) {
    try {
      runs.push(await reportedRun(path, reading));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      problems.push(...error.problems);
    }
  }
  if (problems.length > 0) throw new InputError(problems);
  return runs;
}

async function reportedRun(path: string, reading: DrumReading): Promise<ReportedRun> {
  const run = loadRun({ path });
  const photos = photosOf(run);
  const documents = documentsOf({ kind: 'run', path }, NOTHING);
  const base = {
    title: run.title,
    request: run.request,
    photos,
    confidence: documents.protocol.confidence,
    constructions: documents.constructions.map(described),
  };
  const { protocol } = documents;
  if (protocol.kind === 'impact') return { ...base, ...impactPart(await readImpactTest(documents)) };
  const { drumPart } = await import('./reporting/drum.ts');
  return { ...base, ...(await drumPart({ ...documents, protocol }, reading)) };
}

function impactPart(test: ImpactTest) {
  const { drops, scale, replayed } = replayTest(test);
  return {
    result: analyzeImpact(test),
    method: methodOf(test.protocol),
    conditions: conditionsOf(test, drops),
    samples: replayed.samples.map((sample) => sampleOf(sample, test, scale)),
    exclusions: exclusionsOf(replayed),
    days: daysOf(drops),
  };
}

function described(construction: Construction): ReportedConstruction {
  const { id, revision, title, category, size, parent, declared, factors } = construction;
  return { id, revision, title, category, size, parent, declared, factors };
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
