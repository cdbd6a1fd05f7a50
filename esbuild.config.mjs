// Bundles src/cli/main.ts into dist/, one chunk a command, so that each command loads only what it needs.
// Runs at `prepare` (npm ci, npm install) and before the tests. Written beside dist/ and renamed, so that a
// build never leaves half a program behind.
import { readFileSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(fileURLToPath(import.meta.url));
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const fresh = join(root, `dist.${process.pid}`);
const dist = join(root, 'dist');

await build({
  absWorkingDir: root,
  // Threads, which read parts of drum logs or simulate, start from a file of their own.
  entryPoints: {
    main: 'src/cli/main.ts',
    'drum-worker': 'src/endurance/drum-worker.ts',
    'simulation-worker': 'src/simulation/simulation-worker.ts',
  },
  outdir: fresh,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  minifySyntax: true,
  minifyWhitespace: true,
  keepNames: false,
  sourcemap: false,
  legalComments: 'none',
  // The same library as ES modules, of which only what is used is kept: a third of its size, felt at every start.
  alias: { yaml: join(root, 'node_modules/yaml/browser/index.js') },
  define: { TIRELAB_VERSION: JSON.stringify(version) },
  // commander is CommonJS and asks for node's own modules through require.
  banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
  logLevel: 'warning',
});

const old = `${fresh}.old`;
try {
  renameSync(dist, old);
} catch {
  // The first build finds no dist to put aside.
}
renameSync(fresh, dist);
rmSync(old, { recursive: true, force: true });
