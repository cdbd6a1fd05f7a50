/**
 * Puts every deviation that data can show into clean tests, each at so many random places, and counts where it was told
 * with its code and its line; and looks at as many clean tests, which should raise nothing. The clean tests are made by
 * the protocol's own rule with noise in every column (tests/mutation/clean-test.ts); the faults are put in by
 * tests/mutation/injections.ts, which knows nothing of the checks. Figures: mutator.md.
 *
 *   npx esbuild bench/mutator.ts --bundle --platform=node --format=cjs --outfile=FILE.cjs
 *   node FILE.cjs [places, default 100] [first seed, default 1] > bench/mutator.md
 *   node FILE.cjs --visibility > src/conformance/visibility.md
 *   node FILE.cjs --drum-visibility > src/conformance/drum-visibility.md
 *   node FILE.cjs --fixtures fixtures/deviations
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CATALOGUE } from '../src/conformance/catalogue/catalogue.ts';
import { DRUM_VISIBILITY } from '../src/conformance/drum-visibility.ts';
import { visibilityMarkdown } from '../src/conformance/visibility.ts';
import { randomStream } from '../src/statistics/random/random-stream.ts';
import { csv } from '../tests/mutation/analysed.ts';
import { WRITTEN_KINDS } from '../tests/mutation/by-another-hand.ts';
import { INJECTIONS } from '../tests/mutation/injections.ts';
import { falseAlarms, falseAlarmsElsewhere, tally } from '../tests/mutation/tally.ts';

const [first, second] = process.argv.slice(2);
const drums = { rows: DRUM_VISIBILITY, test: 'drum' } as const;
if (first === '--visibility') process.stdout.write(visibilityMarkdown(CATALOGUE));
else if (first === '--drum-visibility') process.stdout.write(visibilityMarkdown(CATALOGUE, drums));
else if (first === '--fixtures') writeFixtures(second!);
else void count(Number(first ?? 100), Number(second ?? 1));

async function count(places: number, seed: number): Promise<void> {
  const rows: string[] = [];
  const sums = { places: 0, found: 0, alarms: 0 };
  for (const injection of INJECTIONS) {
    const { code, how, found, missed, alarms } = await tally(injection, places, seed);
    sums.places += places;
    sums.found += found;
    sums.alarms += alarms.length;
    rows.push(`| ${code} | ${how} | ${injection.kind} | ${found} | ${missed.length} | ${alarms.length} |`);
    if (missed.length + alarms.length > 0) {
      process.stderr.write(
        `${code} ${how}: missed at ${missed.join(' ')}; ${alarms.slice(0, 20).join('; ')}\n`,
      );
    }
  }
  const clean: string[] = [];
  for (const kind of ['up-and-down', 'rising-height', 'session'] as const) {
    const alarms = await falseAlarms(kind, places, seed + 10_000);
    clean.push(`| ${kind} | ${places} | ${alarms.length} |`);
    for (const alarm of alarms.slice(0, 20)) process.stderr.write(`${alarm}\n`);
  }
  for (const kind of WRITTEN_KINDS) {
    const alarms = await falseAlarmsElsewhere(kind, places, seed + 10_000);
    clean.push(`| ${kind} (by another hand) | ${places} | ${alarms.length} |`);
    for (const alarm of alarms.slice(0, 20)) process.stderr.write(`${alarm}\n`);
  }
  process.stdout.write(`# Faults put into clean tests, and what was told of them

\`bench/mutator.ts\`, ${places} places each, seeds from ${seed}. Found is: told with its code at its line. A false alarm is any
other deviation, or the same one told twice.

The noise of a clean test stays within the tolerances, as that of a careful lab does, and its tyres fail between the ends of
a rise: what is told at a limit is for tests/impact/replay. The faults are put into tests of the same author, made by the
program's own rules; those of another hand (tests/mutation/by-another-hand.ts) use neither these rules nor that generator.

Of ${sums.places} faults ${sums.found} were found and ${sums.places - sums.found} missed; ${sums.alarms} false alarms beside them.

| code | fault | test | found | missed | false alarms |
| --- | --- | --- | --- | --- | --- |
${rows.join('\n')}

Clean tests:

| test | tests | false alarms |
| --- | --- | --- |
${clean.join('\n')}
`);
}

/** One folder a code, as a lab would keep it: run, protocol, log and tables; and where each fault is to be told. */
function writeFixtures(folder: string): void {
  const expected: Record<string, { how: string; file: string; line: number | null }> = {};
  for (const injection of INJECTIONS) {
    const { code, how } = injection;
    // A fixture shows its code alone.
    if (code in expected || injection.beside !== undefined) continue;
    const { test, line, file } = injection.inject(1, randomStream(1, 77));
    const name = file === 'register' ? 'specimens.csv' : 'drops.csv';
    expected[code] = { how, file: name, line };
    const own = join(folder, code);
    mkdirSync(own, { recursive: true });
    const put = (path: string, text: string) => writeFileSync(join(own, path), text);
    put('protocol.yaml', test.protocolText);
    put('drops.csv', csv(test.drops, test.tail));
    put('specimens.csv', csv(test.specimens));
    put('mountings.csv', csv(test.mountings));
    put('checks.csv', csv(test.checks));
    const isAmended = test.amendments.rows.length > 0;
    if (isAmended) put('amendments.csv', csv(test.amendments));
    put(
      'run.yaml',
      `# ${code}: ${how}
format: tirelab.run/1
id: ${code}
protocol: protocol.yaml
specimens: specimens.csv
mountings: mountings.csv
checks: checks.csv
${isAmended ? 'amendments: amendments.csv\n' : ''}logs: [drops.csv]
`,
    );
  }
  const sorted = Object.fromEntries(Object.entries(expected).sort(([a], [b]) => a.localeCompare(b, 'en')));
  writeFileSync(join(folder, 'expected.json'), `${JSON.stringify(sorted, null, 2)}\n`);
}
