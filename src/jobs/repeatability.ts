import type { LogSource } from '../logs/bytes.ts';
import { readStudy, type StudyReadings } from '../logs/study-readings.ts';
import { InputError } from '../problem/problem.ts';
import type { RepeatabilityResult } from '../result/repeatability.ts';
import { gaugeStudy } from '../rig/repeatability/gauge-study.ts';
import { laboratoryStudy } from '../rig/repeatability/laboratories.ts';
import { readersStudy } from '../rig/repeatability/readers.ts';

/**
 * How well a reading can be repeated: a gauge study, a comparison of laboratories, or two readers of damage, by what the table has.
 *
 * @throws InputError with the problems of the table, and for a study from which nothing follows
 */
export async function repeatability(source: LogSource): Promise<RepeatabilityResult> {
  const study = await readStudy(source);
  const { path, sha256, bytes } = study.table;
  try {
    return {
      inputs: [{ role: 'study', path, sha256, bytes, rows: study.readings.length }],
      notes: notesOf(study),
      study: evaluate(study),
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new InputError([
      {
        file: path,
        line: null,
        column: null,
        code: 'study-not-evaluable',
        message: settled(study, error.message),
      },
    ]);
  }
}

function evaluate(study: StudyReadings): RepeatabilityResult['study'] {
  switch (study.kind) {
    case 'gauge':
      return gaugeStudy(study.readings, study.unit);
    case 'laboratories':
      return laboratoryStudy(study.readings, study.unit);
    case 'readers':
      return readersStudy(study.readings);
  }
}

function settled({ kind, readings }: StudyReadings, why: string): string {
  const expected = {
    gauge:
      'every part read by every operator equally often, twice or more: complete the study, or leave the odd parts out',
    laboratories: 'two laboratories or more with several results each: add them',
    readers: 'specimens that both read: fill the second reading',
  }[kind];
  return `found ${readings.length} readings from which nothing follows (${why}); expected ${expected}`;
}

function notesOf({ kind, readings }: StudyReadings): string[] {
  if (kind !== 'readers' || readings.length >= 30) return [];
  return ['few specimens: the interval of kappa is rough (large-sample theory)'];
}
