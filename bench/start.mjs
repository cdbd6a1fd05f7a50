// How long the program takes to start, as ratios to `node -e 0`, which every Node program pays: the commands run in
// turn, round after round, so that a machine whose speed drifts slows them alike. Prints the medians and the ratios.
//   npm run build && node bench/start.mjs [rounds, default 21]
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const tirelab = join(root, 'bin/tirelab.js');
const rounds = Number(process.argv[2] ?? 21);
const commands = {
  'node -e 0': ['-e', '0'],
  'tirelab --version': [tirelab, '--version'],
  'tirelab --help': [tirelab, '--help'],
  'tirelab analyze (30 drops)': [tirelab, 'analyze', join(root, 'fixtures/demo/run.yaml')],
};
const limits = { 'tirelab --version': 1.5, 'tirelab analyze (30 drops)': 3 };

const times = Object.fromEntries(Object.keys(commands).map((name) => [name, []]));
for (let round = -1; round < rounds; round++) {
  for (const [name, args] of Object.entries(commands)) {
    const start = process.hrtime.bigint();
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: root });
    if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr}`);
    if (round >= 0) times[name].push(Number(process.hrtime.bigint() - start) / 1e6);
  }
}

const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];
const base = median(times['node -e 0']);
for (const [name, values] of Object.entries(times)) {
  const ratio = median(values) / base;
  const limit = limits[name];
  const verdict = limit === undefined ? '' : ratio <= limit ? `  within ${limit}` : `  MISSES ${limit}`;
  if (limit !== undefined && ratio > limit) process.exitCode = 1;
  console.log(
    `${name.padEnd(28)} ${median(values).toFixed(0).padStart(5)} ms  ${ratio.toFixed(2)} times${verdict}`,
  );
}
