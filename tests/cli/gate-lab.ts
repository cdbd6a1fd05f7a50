import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { tirelab } from './command.ts';

const CONSTRUCTIONS = ['C-114', 'C-115', 'C-116'] as const;

/**
 * A small repository of a lab in a folder of its own: one specification without criteria of other protocols, three
 * constructions without their parent, and the runs that a test adds. C-114 passes, C-115 fails by its median, C-116 is
 * undecided.
 */
export class GateLab {
  readonly folder = realpathSync(mkdtempSync(join(tmpdir(), 'tirelab-gate-')));

  constructor() {
    for (const folder of ['protocols', 'shared']) {
      cpSync(folder, join(this.folder, folder), { recursive: true });
    }
    mkdirSync(join(this.folder, 'fixtures'));
    rmSync(join(this.folder, 'shared/constructions/C-110.yaml'));
    for (const id of CONSTRUCTIONS) {
      this.edit(`shared/constructions/${id}.yaml`, (text) => text.replace(/^parent:.*\n/m, ''));
    }
    this.edit('shared/specifications/trail-casing.yaml', (text) => text.replace(/^ *- \{ id: life.*\n/m, ''));
  }

  edit(path: string, change: (text: string) => string): void {
    const file = join(this.folder, path);
    writeFileSync(file, change(readFileSync(file, 'utf8')));
  }

  write(path: string, text: string): void {
    const file = join(this.folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }

  /** Copies runs of `fixtures/`. */
  add(...runs: string[]): void {
    for (const run of runs)
      cpSync(`fixtures/${run}`, join(this.folder, 'fixtures', run), { recursive: true });
  }

  /** Takes all constructions away but these. */
  keep(...constructions: string[]): void {
    for (const id of CONSTRUCTIONS) {
      if (!constructions.includes(id)) this.remove(`shared/constructions/${id}.yaml`);
    }
  }

  remove(path = '.'): void {
    rmSync(join(this.folder, path), { recursive: true, force: true });
  }

  /** Stores the result of a run beside it. */
  async store(run: string): Promise<string> {
    const path = join(this.folder, `fixtures/${run}/result.json`);
    await tirelab(['analyze', join(this.folder, `fixtures/${run}/run.yaml`), '--json', '-o', path]);
    return path;
  }

  /** The document of `gate --json`, and one criterion of it by construction and id. */
  async gate(...args: string[]) {
    const { status, out, err } = await tirelab([
      'gate',
      this.folder,
      '--json',
      '--as-of',
      '2026-03-16',
      ...args,
    ]);
    const result = JSON.parse(out);
    const criterion = (construction: string, id: string) =>
      result.constructions
        .find((entry: { construction: { id: string } }) => entry.construction.id === construction)
        ?.criteria.find((entry: { id: string }) => entry.id === id);
    return { status, err, result, criterion };
  }
}
