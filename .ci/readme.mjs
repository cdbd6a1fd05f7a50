// Puts the demo's real output into the README, where tests/cli/readme.test.ts expects it: npm run readme
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';

const { stdout } = spawnSync(process.execPath, ['bin/tirelab.js', 'analyze', 'fixtures/demo/run.yaml'], {
  encoding: 'utf8',
});
const shown = stdout.split('\nInputs\n')[0].trimEnd();
const readme = readFileSync('README.md', 'utf8');
writeFileSync(
  'README.md',
  readme.replace(/(## What it prints\n\n```text\n)[\s\S]*?```/, (_, head) => `${head}${shown}\n\`\`\``),
);
