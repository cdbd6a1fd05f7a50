// The full pass over a drum log against the CSV reader of DuckDB, on the same file, warm, by turns:
// `node bench/drum.mjs LOG [--semicolon LOG2] [--small LOG3] [--rounds 5]`
// Ours: all channels, tolerances, gaps, ledger, minutes, line numbers, SHA-256. Theirs: read_csv by its defaults
// (two threads), a count, a banded sum, two maxima, a mean. Each round starts both anew as processes of their own and
// takes wall time and processor time inside them, from before the file is opened to the result; process start is in
// neither. Needs @duckdb/node-api, which is no dependency: `npm install --no-save @duckdb/node-api@1`, or
// DUCKDB_NODE_API=/path/to/node_modules/@duckdb/node-api.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { availableParallelism, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const here = dirname(fileURLToPath(import.meta.url));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    semicolon: { type: 'string' },
    small: { type: 'string' },
    rounds: { type: 'string', default: '5' },
  },
});
const [log] = positionals;
if (!log) throw new Error('usage: node bench/drum.mjs LOG [--semicolon LOG2] [--small LOG3] [--rounds N]');

const duckdb = process.env.DUCKDB_NODE_API ?? '@duckdb/node-api';
try {
  createRequire(import.meta.url).resolve(duckdb);
} catch {
  process.stderr.write('missing: @duckdb/node-api (npm install --no-save @duckdb/node-api@1)\n');
  process.exit(3);
}

const { build } = await import('esbuild');
const folder = mkdtempSync(join(tmpdir(), 'drum-bench-'));
await build({
  absWorkingDir: join(here, '..'),
  entryPoints: { 'drum-once': 'bench/drum-once.ts', 'drum-worker': 'src/endurance/drum-worker.ts' },
  outdir: folder,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  outExtension: { '.js': '.mjs' },
});

const ours = (path, form = 'plain', workers = String(availableParallelism())) =>
  run([join(folder, 'drum-once.mjs'), path, form, workers]);
const theirs = (path) => run([join(here, 'drum-duckdb.mjs'), duckdb, path]);
const run = (args) => JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' }));
const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];

const cases = {
  ours: () => ours(log),
  duckdb: () => theirs(log),
  ...(values.semicolon ? { semicolon: () => ours(values.semicolon, 'semicolon') } : {}),
  ...(values.small ? { small: () => ours(values.small) } : {}),
  oneThread: () => ours(log, 'plain', '1'),
};
for (const once of Object.values(cases)) once();
const found = Object.fromEntries(Object.keys(cases).map((name) => [name, []]));
for (let round = 0; round < Number(values.rounds); round++) {
  for (const [name, once] of Object.entries(cases)) found[name].push(once());
}
const size = (statSync(log).size / 1e6).toFixed(0);
process.stdout.write(`${log}: ${size} MB, ${found.ours[0].rows} rows, ${values.rounds} rounds by turns\n`);
const medians = {};
for (const [name, runs] of Object.entries(found)) {
  medians[name] = { wall: median(runs.map((r) => r.wall)), cpu: median(runs.map((r) => r.cpu)) };
  const memory = Math.max(...runs.map((r) => r.memory));
  process.stdout.write(
    `${name.padEnd(10)} wall ${medians[name].wall.toFixed(0)} ms, processor ${medians[name].cpu.toFixed(0)} ms, memory ${memory.toFixed(0)} MB\n`,
  );
}
const ratio = (a, b) =>
  `${(medians[a].wall / medians[b].wall).toFixed(2)} wall, ${(medians[a].cpu / medians[b].cpu).toFixed(2)} processor`;
process.stdout.write(`ours / duckdb: ${ratio('ours', 'duckdb')}\n`);
if (values.semicolon) process.stdout.write(`semicolon / plain: ${ratio('semicolon', 'ours')}\n`);
const results = new Set([...found.ours, ...found.oneThread].map((r) => r.result));
process.stdout.write(
  `results on one and two threads: ${results.size === 1 ? 'the same bytes' : 'DIFFERENT'}\n`,
);
rmSync(folder, { recursive: true, force: true });
