import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as load from '../../src/documents/load.ts';

const LOADERS = {
  protocol: load.loadProtocol,
  rig: load.loadRig,
  construction: load.loadConstruction,
  specification: load.loadSpecification,
};
const FOLDERS = {
  protocol: 'protocols',
  rig: 'shared/rigs',
  construction: 'shared/constructions',
  specification: 'shared/specifications',
} as const;

const ready = Object.entries(FOLDERS).flatMap(([kind, folder]) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => [kind as keyof typeof LOADERS, join(folder, file)] as const),
);

describe('the ready files', () => {
  it('are there', () => {
    expect(ready.filter(([kind]) => kind === 'protocol').length).toBeGreaterThanOrEqual(5);
    expect(new Set(ready.map(([kind]) => kind)).size).toBe(4);
  });

  it.each(ready)('%s %s is valid and called by its file name', (kind, path) => {
    const document = LOADERS[kind]({ path });
    expect(`${document.id}.yaml`).toBe(path.split('/').at(-1));
  });

  it.each(ready)('%s %s tells an editor where its schema is', (kind, path) => {
    const [first] = readFileSync(path, 'utf8').split('\n', 1);
    const target = /^# yaml-language-server: \$schema=(\S+)$/.exec(first!)?.[1];
    expect(target).toContain(`${kind}.schema.json`);
    expect(existsSync(join(dirname(path), target!))).toBe(true);
  });

  it.each(ready.filter(([kind]) => kind === 'protocol'))('%s %s explains its keys and warns', (_, path) => {
    const text = readFileSync(path, 'utf8');
    expect(text).toMatch(/^# SAFETY/m);
    expect(text).toMatch(/ISO 4210/);
    const lines = text.split('\n');
    // A key is explained on its line, on the one before, or, where it opens a block, inside.
    const silent = lines.filter((line, i) => {
      if (!/^\w+:/.test(line)) return false;
      const block = lines.slice(i + 1).findIndex((next) => !next.startsWith(' '));
      const around = [line, lines[i - 1]!, ...lines.slice(i + 1, i + 1 + block)];
      return !around.some((near, k) => (k === 1 ? near.startsWith('#') : near.includes('#')));
    });
    expect(silent).toEqual([]);
  });

  it('agree with one another: what a specification pins is there', () => {
    const pins = ready.filter(([kind]) => kind === 'protocol').map(([, path]) => load.loadProtocol({ path }));
    const versions = new Set(pins.map(({ id, version }) => `${id}@${version}`));
    const { criteria } = load.loadSpecification({ path: 'shared/specifications/trail-casing.yaml' });
    const pinned = criteria.flatMap(({ protocol }) =>
      protocol ? [`${protocol.id}@${protocol.version}`] : [],
    );
    expect(pinned.length).toBeGreaterThan(0);
    for (const pin of pinned) expect(versions).toContain(pin);
  });

  it('hold to the common practice that others check by', () => {
    // Common practice, no source: rising height starts at 350 mm; 5,000 km on the drum.
    expect(load.loadProtocol({ path: 'protocols/pinch-rising-height.yaml' })).toHaveProperty('start', 350);
    const drum = load.loadProtocol({ path: 'protocols/drum-two-block.yaml' });
    const km = drum.kind === 'endurance' ? drum.schedule.map(({ distance }) => distance ?? 0) : [];
    expect(km.reduce((sum, one) => sum + one, 0)).toBe(5000);
  });
});
