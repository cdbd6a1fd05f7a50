// How fast a repository is gated: 500 constructions with four runs each, every run with the result that
// `tirelab analyze --json` gives of it. `node bench/gate.mjs [constructions] [runs a construction]` after
// `npm run build`; figures: gate.md. Twenty logs are really analysed; the other runs are copies of them under ids of
// their own, with the hashes of their own files, so that every stored result is current.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const CONSTRUCTIONS = Number(process.argv[2] ?? 500);
const RUNS = Number(process.argv[3] ?? 4);
const LOGS = 20;
const TIMES = 5;

const program = resolve(process.env.TIRELAB ?? 'bin/tirelab.js');
const lab = mkdtempSync(join(tmpdir(), 'tirelab-gate-bench-'));
const tirelab = (...args) =>
  spawnSync(process.execPath, [program, ...args], { cwd: lab, encoding: 'utf8', maxBuffer: 1 << 28 });

try {
  makeShared();
  const templates = Array.from({ length: LOGS }, (_, i) => analysed(i));
  for (let i = 0; i < CONSTRUCTIONS * RUNS; i++) makeRun(i, templates[i % LOGS]);
  const files = CONSTRUCTIONS * (1 + RUNS * 3);
  console.log(`${CONSTRUCTIONS} constructions, ${CONSTRUCTIONS * RUNS} stored results, ${files} files`);
  console.log('seconds by the clock, and of the processor; the clock waits for whatever else runs');
  for (const args of [
    ['--json'],
    ['--format', 'text'],
    ['--format', 'junit'],
    ['--what-if', 'median>=48 J', '--json'],
  ]) {
    const runs = Array.from({ length: TIMES }, () => once(args)).sort((a, b) => a.clock - b.clock);
    const processor = Math.max(...runs.map((run) => run.processor));
    const median = runs[TIMES >> 1].clock;
    console.log(
      `gate ${args.join(' ')}: median ${median.toFixed(2)} s, slowest ${runs.at(-1).clock.toFixed(2)} s; processor at most ${processor.toFixed(2)} s`,
    );
  }
  console.log(`load ${loadavg()[0].toFixed(1)}`);
} finally {
  rmSync(lab, { recursive: true, force: true });
}

function once(args) {
  const began = performance.now();
  const timed = spawnSync(
    'bash',
    ['-c', 'TIMEFORMAT="%U %S"; time "$@"', '-', process.execPath, program, 'gate', ...args],
    {
      cwd: lab,
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    },
  );
  const clock = (performance.now() - began) / 1000;
  const { stdout, stderr, status } = timed;
  const [user, system] = stderr.trim().split('\n').at(-1).split(' ').map(Number);
  if (args.at(-1) === '--json') {
    const { constructions, results } = JSON.parse(stdout);
    const current = results.filter(({ state }) => state === 'current').length;
    const evidence = constructions.flatMap(({ criteria }) => criteria.flatMap((one) => one.evidence));
    const stored = evidence.filter(({ result }) => result !== null).length;
    const asExpected =
      constructions.length === CONSTRUCTIONS &&
      current === CONSTRUCTIONS * RUNS &&
      stored === 2 * CONSTRUCTIONS * RUNS &&
      stored === evidence.length;
    if (!asExpected)
      throw new Error(`not what was made: ${constructions.length}, ${current}, ${stored}; ${stderr}`);
  } else if (status === 2 || status === 70) throw new Error(stderr);
  return { clock, processor: user + system };
}

function makeShared() {
  for (const folder of ['protocols', 'rigs', 'specifications', 'constructions', 'runs'])
    mkdirSync(join(lab, folder));
  copyFileSync('protocols/pinch-up-down.yaml', join(lab, 'protocols/pinch-up-down.yaml'));
  copyFileSync('shared/rigs/drop-2.yaml', join(lab, 'rigs/drop-2.yaml'));
  writeFileSync(
    join(lab, 'specifications/trail.yaml'),
    `format: tirelab.specification/1
id: trail
version: 1.0.0
criteria:
  - { id: median, protocol: pinch-up-down@1.0.0, quantity: medianFailureEnergy, atLeast: 45 J, minSpecimens: 10 }
  - { id: tail, protocol: pinch-up-down@1.0.0, quantity: failureEnergyQuantile, probability: 10 %, atLeast: 34 J }
`,
  );
  for (let i = 0; i < CONSTRUCTIONS; i++) {
    writeFileSync(
      join(lab, `constructions/${constructionOf(i)}.yaml`),
      `format: tirelab.construction/1
id: ${constructionOf(i)}
revision: "1"
category: trail
size: "62-622"
${i > 0 ? `parent: ${constructionOf(i - 1)}@1\ndeclared: [casing.tpi]\n` : ''}factors:
  casing: { plies: 2, tpi: ${60 + (i % 60)}, insert: none }
  bead: aramid
  tread: { pattern: T-07, compound: K-3, depth: 3.2 mm }
  mass: ${850 + (i % 90)} g
`,
    );
  }
}

/** An up-and-down test of 30 tyres about some median: drawn by a rule, not by chance. */
function logOf(i) {
  let height = 500;
  const rows = Array.from({ length: 30 }, (_, k) => {
    const strength = 560 + 5 * i + 70 * Math.sin(1 + k * 2.399963 + i);
    const failed = height >= strength;
    const row = `${k + 1},T-${k + 1},${height},2.00,${failed ? 'failed' : 'survived'}`;
    height += failed ? -25 : 25;
    return row;
  });
  return `drop,specimen,height [mm],pressure [bar],outcome\n${rows.join('\n')}\n`;
}

function analysed(i) {
  makeRunFiles(`t${i}`, 0, logOf(i));
  const { stdout, stderr } = tirelab('analyze', `runs/t${i}/run.yaml`, '--json');
  rmSync(join(lab, `runs/t${i}`), { recursive: true });
  if (stdout === '') throw new Error(stderr);
  return { log: logOf(i), result: JSON.parse(stdout) };
}

function makeRun(i, { log, result }) {
  const construction = Math.floor(i / RUNS);
  makeRunFiles(`r${i}`, construction, log);
  const inputs = result.inputs.map((input) => {
    const path = input.path
      .replace(/^runs\/t\d+/u, `runs/r${i}`)
      .replace(constructionOf(0), constructionOf(construction));
    const bytes = readFileSync(join(lab, path));
    return { ...input, path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
  });
  const constructions = [{ id: constructionOf(construction), revision: '1' }];
  const own = { ...result, run: `r${i}`, constructions, inputs };
  writeFileSync(join(lab, `runs/r${i}/result.json`), JSON.stringify(own, null, 2));
}

function makeRunFiles(name, construction, log) {
  mkdirSync(join(lab, `runs/${name}`));
  writeFileSync(join(lab, `runs/${name}/drops.csv`), log);
  writeFileSync(
    join(lab, `runs/${name}/run.yaml`),
    `format: tirelab.run/1
id: ${name}
protocol: ../../protocols/pinch-up-down.yaml
rig: ../../rigs/drop-2.yaml
constructions: [../../constructions/${constructionOf(construction)}.yaml]
specification: ../../specifications/trail.yaml
logs: [drops.csv]
`,
  );
}

function constructionOf(i) {
  return `C-${String(i + 1).padStart(4, '0')}`;
}
