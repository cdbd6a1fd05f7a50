import { spawnSync } from 'node:child_process';

/**
 * Sees that the tools of this lane are there before any of its tests runs: `npm test` needs Node alone, these need more.
 *
 * @throws Error that says in one line what is missing, and how Debian calls it.
 */
export function setup(): void {
  const missing = [
    ['xmllint', 'libxml2-utils'],
    ['git', 'git'],
  ].filter(([tool]) => spawnSync(tool!, ['--version']).error !== undefined);
  if (missing.length > 0) {
    const names = missing.map(([tool, debian]) => `${tool} (apt-get install ${debian})`);
    throw new Error(`npm run test:tools needs ${names.join(' and ')}`);
  }
}
