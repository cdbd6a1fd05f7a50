// How fast logs of 30 drops are analysed, and R beside: node bench/batch.mjs [logs, default 10000] [seed, default 20261125]
// (after npm run build; R only where Rscript is there). Each log is a file of its own; every program reads, fits and gives
// the median with its interval. Figures: batch.md.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const [count = 10_000, seed = 20_261_125] = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'batch-bench-'));
const logs = join(folder, 'logs');

/** A linear congruential generator (Park and Miller 1988) and Box and Muller's normal numbers: enough for invented logs. */
let state = seed % 2_147_483_647;
const uniform = () => {
  state = (state * 48_271) % 2_147_483_647;
  return state / 2_147_483_647;
};
const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());

/** An up-and-down test of protocols/pinch-up-down.yaml: 30 drops from 500 mm in steps of 25 mm, spread 30 mm. */
function logText() {
  const median = 560 + 40 * normal();
  let height = 500;
  let text = 'drop,specimen,height [mm],pressure [bar],temperature [°C],outcome\n';
  for (let drop = 1; drop <= 30; drop++) {
    const failed = median + 30 * normal() <= height;
    const pressure = (2 + 0.02 * (uniform() - 0.5)).toFixed(2);
    const temperature = (23 + uniform()).toFixed(1);
    text += `${drop},T-${drop},${height},${pressure},${temperature},${failed ? 'failed' : 'survived'}\n`;
    height += failed ? -25 : 25;
  }
  return text;
}

/** Runs a command under time(1); seconds of the wall and of the processor, and peak memory in MB. */
function timed(command, args) {
  const report = join(folder, 'time');
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(
    '/usr/bin/time',
    ['-f', '%U %S %M', '-o', report, command, ...args],
    { encoding: 'utf8', maxBuffer: 1 << 30, cwd: root },
  );
  const wall = (performance.now() - began) / 1000;
  if (status !== 0) throw new Error(`${command} ended with ${status}: ${stderr.slice(0, 500)}`);
  const [user, system, peak] = readFileSync(report, 'utf8').trim().split(/\s+/u).map(Number);
  return { wall, cpu: user + system, peak: peak / 1024, stdout };
}

try {
  mkdirSync(logs);
  for (let i = 0; i < count; i++) writeFileSync(join(logs, `${String(i).padStart(6, '0')}.csv`), logText());
  console.log(
    `${count} logs of 30 drops, seed ${seed}; ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, node ${process.version}`,
  );
  const analyze = ['bin/tirelab.js', 'analyze', '--protocol', 'protocols/pinch-up-down.yaml', '--each'];
  const hashes = new Set();
  for (const [name, ...options] of [
    ['profile intervals, CSV, one worker', '--intervals', 'profile-likelihood', '--csv', '--workers', '1'],
    ['profile intervals, CSV, two workers', '--intervals', 'profile-likelihood', '--csv', '--workers', '2'],
    ['profile intervals, CSV, three workers', '--intervals', 'profile-likelihood', '--csv', '--workers', '3'],
    [
      'profile intervals, NDJSON, two workers',
      '--intervals',
      'profile-likelihood',
      '--ndjson',
      '--workers',
      '2',
    ],
    ['calibrated and profile intervals, CSV, two workers', '--csv', '--workers', '2'],
  ]) {
    const { wall, cpu, peak, stdout } = timed(process.execPath, [
      ...analyze,
      ...options,
      join(logs, '*.csv'),
    ]);
    if (stdout.split('\n').length < count) throw new Error(`only ${stdout.split('\n').length} lines came`);
    if (name.startsWith('profile intervals, CSV'))
      hashes.add(createHash('sha256').update(stdout).digest('hex'));
    const each = Math.round(count / wall);
    console.log(
      `tirelab, ${name}: ${wall.toFixed(1)} s, ${cpu.toFixed(1)} CPU s, ${each} logs/s, peak ${peak.toFixed(0)} MB`,
    );
  }
  console.log(`output for one, two and three workers: ${hashes.size === 1 ? 'the same bytes' : 'DIFFERENT'}`);
  for (const [kind, most] of [
    ['fit', Math.min(count, 2000)],
    ['profile', Math.min(count, 300)],
  ]) {
    const found = spawnSync('Rscript', ['bench/batch.R', logs, String(most), kind], {
      encoding: 'utf8',
      cwd: root,
    });
    if (found.error) console.log('no Rscript here');
    else console.log(`R, ${found.stdout.trim()}${found.stderr}`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
