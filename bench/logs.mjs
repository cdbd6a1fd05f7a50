// How fast and in how much memory a plain drop log is read: `node bench/logs.mjs [rows …]`, by default 10,000,
// 100,000 and 1,000,000. Each size is read by a process of its own, so that its peak memory is its own; beside it
// stands what Node itself takes, and what it takes to import the reader.
//
// Two cores, Node 20.20, data without a random number (best of three; other work on the machine):
//      rows      MB      ms    rows/s  peak MB
//         0     0.0       8                 43
//     10000     1.0     102     97608       62
//    100000     9.7     529    188968      118
//   1000000    99.4    4171    239724      499
import { execFileSync } from 'node:child_process';
import { createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { finished } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const sizes = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'logs-bench-'));

const HEADER =
  'drop,time,series,specimen,site [deg],planned height [mm],height [mm],mass [kg],pressure [bar],' +
  'temperature [°C],velocity [m/s],outcome,valid,operator,remark';

/** Ten hits a specimen, twenty seconds apart; every seventh row has a remark in quotes. */
function row(i) {
  const time = new Date(Date.UTC(2026, 2, 1, 6) + i * 20_000).toISOString();
  const height = 400 + ((i * 37) % 20) * 10;
  const remark = i % 7 === 0 ? `"sheet ${i}, ""as agreed"""` : '';
  return (
    `${i + 1},${time},S-${1 + (i % 3)},T-${1 + Math.floor(i / 10)},${(i % 8) * 45},${height},` +
    `${(height + ((i * 13) % 9) / 10).toFixed(1)},8.000,${(2 + ((i * 7) % 5) / 100).toFixed(2)},23.${i % 10},` +
    `${(2.8 + ((i * 11) % 50) / 100).toFixed(3)},${i % 2 ? 'failed' : 'survived'},yes,k${i % 4},${remark}\n`
  );
}

async function writeLog(path, rows) {
  const file = createWriteStream(path);
  file.write(`${HEADER}\n`);
  for (let i = 0; i < rows; i += 1000) {
    let block = '';
    for (let j = i; j < Math.min(rows, i + 1000); j++) block += row(j);
    if (!file.write(block)) await new Promise((resolve) => file.once('drain', resolve));
  }
  file.end();
  await finished(file);
}

const READ = `
const begin = performance.now();
const { readDropLog } = await import(process.argv[1]);
const log = process.argv[2] ? await readDropLog(process.argv[2]) : { drops: [], bytes: 0 };
const ms = performance.now() - begin;
console.log(JSON.stringify({ ms, rows: log.drops.length, bytes: log.bytes, peak: process.resourceUsage().maxRSS / 1024 }));
`;

function read(module, log) {
  const args = ['--input-type=module', '-e', READ, module, ...(log ? [log] : [])];
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' }));
}

try {
  const module = join(folder, 'drops.mjs');
  await build({
    entryPoints: [join(root, 'src/logs/drops.ts')],
    outfile: module,
    bundle: true,
    format: 'esm',
    platform: 'node',
    logLevel: 'warning',
  });
  console.log(
    `${'rows'.padStart(9)} ${'MB'.padStart(7)} ${'ms'.padStart(7)} ${'rows/s'.padStart(9)} ${'peak MB'.padStart(8)}`,
  );
  for (const rows of [0, ...(sizes.length > 0 ? sizes : [10_000, 100_000, 1_000_000])]) {
    const log = join(folder, `${rows}.csv`);
    if (rows > 0) await writeLog(log, rows);
    const runs = Array.from({ length: 3 }, () => read(module, rows > 0 ? log : null));
    const best = runs.reduce((a, b) => (b.ms < a.ms ? b : a));
    const peak = Math.max(...runs.map((run) => run.peak));
    if (best.rows !== rows) throw new Error(`read ${best.rows} of ${rows} rows`);
    const cells = [
      rows,
      (best.bytes / 1e6).toFixed(1),
      best.ms.toFixed(0),
      rows === 0 ? '' : Math.round((rows / best.ms) * 1000),
      peak.toFixed(0),
    ];
    console.log(cells.map((cell, i) => String(cell).padStart([9, 7, 7, 9, 8][i])).join(' '));
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
