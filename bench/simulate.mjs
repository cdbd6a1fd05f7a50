// How fast tests are simulated, by the built program: node bench/simulate.mjs (after npm run build). Figures: simulate.md.
import { spawnSync } from 'node:child_process';
import { availableParallelism, loadavg } from 'node:os';

const P = 'protocols/pinch-up-down.yaml';
const S = 'shared/specifications/trail-casing.yaml';

const CASES = {
  'one million 30-drop up-and-down tests with likelihood fits': [
    P,
    '--median',
    '48 J',
    '--spread',
    '4 J',
    '--any-offset',
    '--tests',
    '1000000',
    '--no-coverage',
    '--json',
  ],
  'operating characteristic, 20 medians, 10,000 tests each, verdicts': [
    P,
    '--spec',
    S,
    '--medians',
    '36 J..60 J/20',
    '--spread',
    '4 J',
    '--tests',
    '10000',
    '--json',
  ],
};

console.log(`${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, node ${process.version}`);
for (const [name, args] of Object.entries(CASES)) {
  const began = performance.now();
  const { status, stderr } = spawnSync(
    'bash',
    ['-c', `TIMEFORMAT='%U %S'; time node bin/tirelab.js simulate "$@" > /dev/null`, 'bash', ...args],
    { encoding: 'utf8' },
  );
  const seconds = (performance.now() - began) / 1000;
  const [user, system] = stderr.trim().split(/\s+/u).map(Number);
  console.log(
    `${name}: ${seconds.toFixed(1)} s, ${(user + system).toFixed(1)} CPU seconds${status === 0 ? '' : `, status ${status}`}`,
  );
}
