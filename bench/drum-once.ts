// One full pass over a drum log, for bench/drum.mjs: `drum-once LOG plain|semicolon THREADS`.
import { createHash } from 'node:crypto';
import { compileSparingly } from '../src/cli/engine.ts';
import type { EnduranceBlock } from '../src/documents/kinds.ts';
import { drumDeviations } from '../src/endurance/deviations.ts';
import { passDrumLogs } from '../src/endurance/drum-pass.ts';
import { inlineRunner, threadRunner } from '../src/endurance/part-runner.ts';
import { type Minute, reduceMinute } from '../src/endurance/reduction.ts';
import { summarise } from '../src/endurance/summary.ts';
import { PLAIN_SAMPLES, type SampleDialect } from '../src/logs/samples/dialect.ts';
import { type Quantity, readQuantity } from '../src/quantity/quantity.ts';

const [path, form, threads] = process.argv.slice(2) as [string, string, string];
const dialect: SampleDialect =
  form === 'semicolon' ? { ...PLAIN_SAMPLES, separator: ';', decimal: ',' } : PLAIN_SAMPLES;

function quantity(text: string, unit: string): Quantity {
  const reading = readQuantity(text, unit);
  if (!reading.ok) throw new Error(reading.why);
  return reading.value;
}

const block = (name: string, distance: number, speed: string, load: string): EnduranceBlock => ({
  block: name,
  distance,
  duration: null,
  speed: quantity(speed, 'km/h'),
  load: quantity(load, 'N'),
  pressure: quantity('2.5 bar ± 0.1 bar', 'bar'),
  temperature: quantity('25 °C ± 5 K', '°C'),
});
const schedule = [
  block('run-in', 100, '25 km/h ± 2 %', '600 N ± 2 %'),
  block('main', 9900, '30 km/h ± 2 %', '650 N ± 2 %'),
];

/** All numbers of a minute, to be hashed: cheaper than its JSON, which the pass does not ask for. */
function numbersOf({ time, rows, channels }: Minute): Float64Array {
  const numbers = new Float64Array(2 + channels.length * 8);
  numbers.set([time, rows]);
  let at = 2;
  for (const { n, missing, mean, min, max, sd, first, last } of channels) {
    numbers[at++] = n;
    numbers[at++] = missing;
    for (const value of [mean, min, max, sd, first, last]) numbers[at++] = value ?? Number.NaN;
  }
  return numbers;
}

// As the command does before it starts its threads.
compileSparingly();
const before = process.cpuUsage();
const begin = performance.now();
const minutes = createHash('sha256');
let count = 0;
const entry = new URL('./drum-worker.mjs', import.meta.url);
const runner = threads === '0' ? inlineRunner() : threadRunner(entry, Number(threads));
const pass = await passDrumLogs([path], {
  dialect,
  schedule,
  sampling: 10,
  runner,
  onFrame: (frame, plan) => {
    minutes.update(numbersOf(reduceMinute(frame, plan)));
    count++;
  },
});
const summary = summarise(pass);
const deviations = drumDeviations(pass, summary);
const wall = performance.now() - begin;
const { user, system } = process.cpuUsage(before);
await runner.close();
const result = createHash('sha256')
  .update(JSON.stringify([summary, deviations, pass.logs]))
  .update(minutes.digest())
  .digest('hex');
const memory = process.resourceUsage().maxRSS / 1000;
process.stdout.write(
  JSON.stringify({
    rows: pass.logs[0]!.rows,
    wall,
    cpu: (user + system) / 1000,
    memory,
    minutes: count,
    result,
  }),
);
