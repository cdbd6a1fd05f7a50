// What a report costs beyond its analysis: node bench/report.mjs [--times 15] (after npm run build)
//
// The full report of fixtures/drum-run has six charts, that of fixtures/demo four. Each command is a process of its own;
// they take turns, so that what else the machine does falls on all of them, and of each the median is told. Then the sizes, and
// whether a second run, another time zone and another locale give the same bytes.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpus, platform } from 'node:os';
import { parseArgs } from 'node:util';

const { values } = parseArgs({ options: { times: { type: 'string', default: '15' } } });
const times = Number(values.times);
const RUNS = ['fixtures/drum-run/run.yaml', 'fixtures/demo/run.yaml'];

function run(args, env = {}) {
  const start = performance.now();
  const { stdout, status } = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    maxBuffer: 1e9,
    env: { ...process.env, ...env },
  });
  if (status === null || status > 3) throw new Error(`${args.join(' ')} ended with ${status}`);
  return { milliseconds: performance.now() - start, stdout };
}

const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];
const hash = (text) => createHash('sha256').update(text).digest('hex').slice(0, 12);

console.log(
  `Node ${process.version}, ${platform()}, ${cpus().length} x ${cpus()[0].model.trim()}; ${times} times each`,
);
for (const path of RUNS) {
  const commands = {
    nothing: ['-e', '0'],
    analyze: ['bin/tirelab.js', 'analyze', path],
    page: ['bin/tirelab.js', 'report', path],
    full: ['bin/tirelab.js', 'report', '--kind', 'full', path],
  };
  const taken = Object.fromEntries(Object.keys(commands).map((name) => [name, []]));
  for (let i = 0; i < times; i += 1) {
    for (const [name, args] of Object.entries(commands)) taken[name].push(run(args).milliseconds);
  }
  const [nothing, analyze, page, full] = Object.values(taken).map(median);
  const added = (one) =>
    `${(one - analyze).toFixed(0)} ms more, ${((one - analyze) / nothing).toFixed(2)} times node -e 0`;
  console.log(`\n${path}`);
  console.log(`  node -e 0        ${nothing.toFixed(0)} ms`);
  console.log(`  analyze          ${analyze.toFixed(0)} ms`);
  console.log(`  report           ${page.toFixed(0)} ms: ${added(page)}`);
  console.log(`  report, full     ${full.toFixed(0)} ms: ${added(full)}`);
  for (const kind of ['page', 'full']) {
    const args = ['bin/tirelab.js', 'report', '--kind', kind, path];
    const { stdout } = run(args);
    const others = [
      run(args),
      run(args, { TZ: 'Pacific/Chatham', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' }),
      run(args, { TZ: 'America/St_Johns', LC_ALL: 'C' }),
    ].map((other) => hash(other.stdout));
    const isSame = others.every((other) => other === hash(stdout));
    const charts = stdout.match(/<svg/g)?.length ?? 0;
    console.log(
      `  ${kind.padEnd(4)}  ${charts} charts, ${(Buffer.byteLength(stdout) / 1000).toFixed(0)} kB, ${isSame ? 'the same bytes' : 'OTHER BYTES'} on a second run and under other zones and locales (${hash(stdout)})`,
    );
  }
}
