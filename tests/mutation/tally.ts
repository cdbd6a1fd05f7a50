import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { analysed, analysedFiles } from './analysed.ts';
import { writtenTest } from './by-another-hand.ts';
import { cleanTest, type Kind } from './clean-test.ts';
import type { Injection } from './injections.ts';

export interface Tally {
  readonly code: string;
  readonly how: string;
  readonly places: number;
  readonly found: number;
  /** Seeds at which it was not found at its line. */
  readonly missed: readonly number[];
  /** Seeds at which another code was told. */
  readonly alarms: readonly string[];
}

/** Puts one fault into so many clean tests, each at a random place, and counts where it was told. */
export async function tally(injection: Injection, places: number, from = 1): Promise<Tally> {
  const { code, how, beside = [] } = injection;
  const missed: number[] = [];
  const alarms: string[] = [];
  for (let seed = from; seed < from + places; seed++) {
    const { test, line, file } = injection.inject(seed, randomStream(seed, 77));
    const { deviations } = await analysed(test);
    const isTold = deviations.some(
      (it) => it.code === code && it.line === line && (it.file === 'register') === (file === 'register'),
    );
    if (!isTold) missed.push(seed);
    const others = deviations.filter((it) => it.code !== code && !beside.includes(it.code));
    const doubled = deviations.filter((it) => it.code === code).length - (isTold ? 1 : 0);
    for (const it of others) alarms.push(`${seed}: ${it.code}@${it.line}`);
    if (isTold && doubled > 0) alarms.push(`${seed}: ${code} ${doubled} times more`);
  }
  return { code, how, places, found: places - missed.length, missed, alarms };
}

/** The deviations of so many clean tests of a kind: there should be none. */
export async function falseAlarms(kind: Kind, tests: number, from = 1): Promise<string[]> {
  const alarms: string[] = [];
  for (let seed = from; seed < from + tests; seed++) {
    const { deviations } = await analysed(cleanTest(seed, kind));
    for (const { code, line, message } of deviations)
      alarms.push(`${kind} ${seed}: ${code}@${line} ${message}`);
  }
  return alarms;
}

/** The same of tests written by another hand. */
export async function falseAlarmsElsewhere(kind: string, tests: number, from = 1): Promise<string[]> {
  const alarms: string[] = [];
  for (let seed = from; seed < from + tests; seed++) {
    const { deviations } = await analysedFiles(writtenTest(kind, seed));
    for (const { code, line, message } of deviations)
      alarms.push(`${kind} ${seed}: ${code}@${line} ${message}`);
  }
  return alarms;
}
