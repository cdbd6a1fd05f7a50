// Bundles src/ into dist/: the program as one file with its compiled code beside it, which bin/tirelab.js starts, and
// the threads. Runs at `prepare` (npm ci, npm install) and before the tests. Written beside dist/ and renamed, so that
// a build never leaves half a program behind.
import { spawnSync } from 'node:child_process';
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(fileURLToPath(import.meta.url));
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const fresh = join(root, `dist.${process.pid}`);
const dist = join(root, 'dist');

const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  minify: true,
  sourcemap: false,
  legalComments: 'none',
  // The same library as ES modules, of which only what is used is kept: a third of its size, felt at every start.
  alias: { yaml: join(root, 'node_modules/yaml/browser/index.js') },
  // Loaded from node_modules when a workbook is met, and read at no other start.
  external: ['@e965/xlsx'],
  define: { TIRELAB_VERSION: JSON.stringify(version) },
  logLevel: 'warning',
};

// A function of what it needs from outside, as bin/tirelab.js calls it. What a command alone needs stays unrun until it
// is asked for: `import()` becomes a `require` of a part of the same file.
const program = await build({
  ...shared,
  entryPoints: ['src/cli/main.ts'],
  outfile: join(fresh, 'tirelab.js'),
  format: 'cjs',
  supported: { 'dynamic-import': false },
  define: { ...shared.define, 'import.meta.url': '__here' },
  banner: {
    js: '(function(require,filename){const __here=require("node:url").pathToFileURL(filename).href;',
  },
  footer: { js: '})' },
  write: false,
});
await build({
  ...shared,
  // Threads, which read parts of drum logs or simulate, start from a file of their own.
  entryPoints: {
    'drum-worker': 'src/endurance/drum-worker.ts',
    'simulation-worker': 'src/simulation/simulation-worker.ts',
    'batch-worker': 'src/cli/batch/batch-worker.ts',
    'compare-worker': 'src/cli/batch/compare-worker.ts',
  },
  outdir: fresh,
  splitting: true,
  format: 'esm',
});

// esbuild leaves letters beyond ASCII in patterns as they are; escaped, the file is read without being decoded.
const [{ path, text }] = program.outputFiles;
writeFileSync(
  path,
  text.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`),
);
const kept = spawnSync(process.execPath, [join(root, '.ci/keep-compiled.cjs'), path], {
  cwd: root,
  encoding: 'utf8',
});
// Without it the program starts later but is the same, so that a change half made can still be tried.
if (kept.status !== 0)
  console.warn(`no compiled code was kept, the demo ended with ${kept.status}: ${kept.stderr}`);

const old = `${fresh}.old`;
try {
  renameSync(dist, old);
} catch {
  // The first build finds no dist to put aside.
}
renameSync(fresh, dist);
rmSync(old, { recursive: true, force: true });
