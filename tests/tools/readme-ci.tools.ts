import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { GateLab } from '../cli/gate-lab.ts';

// The snippets for CI that the README shows, carried out line by line by the built program in a
// repository of a lab.

const readme = readFileSync('README.md', 'utf8');
const snippet = (file: string) => {
  const found = new RegExp(`\`\`\`yaml\\n# ${file.replaceAll('.', '\\.')}\\n([\\s\\S]*?)\`\`\``, 'u').exec(
    readme,
  )?.[1];
  if (found === undefined) throw new Error(`no snippet of ${file} in the README`);
  return parse(found);
};

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
  lab.add('demo', 'demo-fail', 'demo-undecided');
  // As npm installs it: npx finds the program of the repository before it asks anyone else.
  lab.write(
    'node_modules/.bin/tirelab',
    `#!/bin/sh\nexec "${process.execPath}" "${resolve('bin/tirelab.js')}" "$@"\n`,
  );
  chmodSync(join(lab.folder, 'node_modules/.bin/tirelab'), 0o755);
  lab.write('package.json', '{ "name": "lab", "private": true }\n');
  lab.write('.gitignore', 'node_modules\n');
  git('init', '--quiet', '--initial-branch', 'main');
  git('add', '.');
  git(
    '-c',
    'user.name=lab',
    '-c',
    'user.email=lab@example.invalid',
    'commit',
    '--quiet',
    '--message',
    'a state',
  );
  git('update-ref', 'refs/remotes/origin/main', 'HEAD');
});
afterEach(() => lab.remove());

function git(...args: string[]): string {
  return execFileSync('git', ['-C', lab.folder, ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
}

/** Carries out the lines of a job, as a runner does, but for the installation; the status of each. */
function carryOut(lines: readonly string[], env: Record<string, string>) {
  return lines
    .filter((line) => line !== 'npm ci')
    .map((line) => {
      const { status, stdout, stderr } = spawnSync('bash', ['-eo', 'pipefail', '-c', line], {
        cwd: lab.folder,
        encoding: 'utf8',
        env: { ...process.env, npm_config_offline: 'true', ...env },
      });
      return { line, status, stdout, stderr };
    });
}

describe('the snippets for CI in the README', () => {
  it('work as a GitHub workflow: annotations, summary, and the verdict as the status', () => {
    const { steps } = snippet('.github/workflows/gate.yml').jobs.gate;
    const lines = steps.flatMap(({ run }: { run?: string }) => run ?? []);
    const summary = join(lab.folder, 'summary.md');
    lab.write('summary.md', 'before\n');
    const done = carryOut(lines, { GITHUB_STEP_SUMMARY: summary, GITHUB_BASE_REF: 'main' });
    expect(done.map(({ status }) => status)).toEqual([0, 0, 1]);
    expect(done[0]!.stdout).toMatch(/^::error file=shared\/constructions\/C-115\.yaml,line=1,/mu);
    expect(readFileSync(summary, 'utf8')).toMatch(/^before\n### tirelab gate: fail\n/u);
    expect(done[2]!.stdout).toContain('C-115');
  });

  it('work as a GitLab pipeline: the reports that it collects are there, and the verdict is the status', () => {
    const { script, artifacts, allow_failure } = snippet('.gitlab-ci.yml').gate;
    const done = carryOut(script, { CI_MERGE_REQUEST_DIFF_BASE_SHA: git('rev-parse', 'HEAD').trim() });
    expect(done.map(({ status }) => status)).toEqual([0, 0, 1]);
    const { junit, codequality } = artifacts.reports;
    expect(existsSync(join(lab.folder, junit))).toBe(true);
    const entries = JSON.parse(readFileSync(join(lab.folder, codequality), 'utf8'));
    for (const entry of entries) {
      expect(entry).toMatchObject({
        description: expect.any(String),
        check_name: expect.any(String),
        fingerprint: expect.stringMatching(/^[0-9a-f]{64}$/u),
        severity: expect.stringMatching(/^(?:info|minor|major|critical|blocker)$/u),
        location: { path: expect.not.stringMatching(/^\//u), lines: { begin: expect.any(Number) } },
      });
    }
    // Status 3 only warns there, as the README says: an undecided construction alone.
    expect(allow_failure.exit_codes).toBe(3);
    lab.keep('C-116');
    lab.remove('fixtures/demo-fail');
    lab.remove('fixtures/demo');
    expect(carryOut([script.at(-1)], { CI_MERGE_REQUEST_DIFF_BASE_SHA: 'HEAD' })[0]!.status).toBe(3);
  });
});
