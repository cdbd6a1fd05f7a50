import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';
import { GateLab } from './gate-lab.ts';

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
});
afterEach(() => lab.remove());

async function problems(...args: string[]) {
  const { status, out, err } = await tirelab(['gate', lab.folder, '--json', ...args]);
  const document = JSON.parse(out);
  return { status, err, all: status === 2 ? document.problems : [], document };
}

describe('what is wrong with a repository', () => {
  it('is told in one go, each at its file, line and column, with status 2', async () => {
    lab.add('demo');
    lab.write(
      'runs/a.yaml',
      'format: tirelab.run/1\nid: a\nprotocol: ../protocols/pinch-up-down.yaml\nconstructions: [../shared/constructions/C-999.yaml]\nlogs: [../fixtures/demo/drops.csv]\n',
    );
    lab.write(
      'runs/b.yaml',
      'format: tirelab.run/1\nid: b\nprotocol: ../protocols/pinch-up-down.yaml\nconstructions:\n  - { file: ../shared/constructions/C-114.yaml, revision: "7" }\nlogs: [../fixtures/demo/drops.csv]\n',
    );
    lab.write(
      'runs/c.yaml',
      'format: tirelab.run/1\nid: demo\nprotocol: ../protocols/pinch-up-down.yaml\nlogs: [../fixtures/demo/drops.csv]\n',
    );
    lab.write('runs/register.csv', 'specimen,construction\nT-1,C-114@2\nT-22,C-114@9\n');
    lab.write(
      'runs/d.yaml',
      'format: tirelab.run/1\nid: d\nprotocol: ../protocols/pinch-up-down.yaml\nspecimens: register.csv\nlogs: [../fixtures/demo/drops.csv]\n',
    );
    lab.write(
      'constructions/twin.yaml',
      'format: tirelab.construction/1\nrevision: "2"\nid: C-114\ncategory: road\n',
    );
    lab.edit('shared/constructions/C-115.yaml', (text) => `${text}parent: C-116@1\n`);
    lab.edit('shared/constructions/C-116.yaml', (text) => `${text}parent: C-115@1\n`);
    lab.edit('shared/specifications/trail-casing.yaml', (text) =>
      text.replace(
        'quantity: medianFailureEnergy, atLeast: 45 J',
        'quantity: medianFailureEnergy, atLeast: 45 mm',
      ),
    );
    lab.write(
      'waivers/w.yaml',
      'format: tirelab.waiver/1\nid: W-1\nscope: { specification: other@1, criterion: c, construction: C-115@1 }\nrole: quality\nreason: r\nexpires: 31.12.2026\n',
    );
    const { status, all, err } = await problems();
    expect(status).toBe(2);
    const found = all.map(
      ({ file, line, column, code }: { file: string; line: number; column: number; code: string }) =>
        `${file.slice(lab.folder.length + 1)}:${line}:${column} ${code}`,
    );
    expect(found.toSorted()).toEqual([
      'runs/a.yaml:4:17 unknown-construction',
      'runs/b.yaml:5:59 unknown-revision',
      'runs/c.yaml:2:5 duplicate-id',
      'runs/register.csv:3:6 unknown-revision',
      'shared/constructions/C-114.yaml:5:5 duplicate-id',
      'shared/constructions/C-115.yaml:15:9 circular-parent',
      'shared/constructions/C-116.yaml:15:9 circular-parent',
      'shared/specifications/trail-casing.yaml:17:90 bad-quantity',
      'waivers/w.yaml:1:1 missing-key',
      'waivers/w.yaml:6:10 bad-value',
    ]);
    // Each message stands on one line of standard error too, with its place.
    for (const { message, line, column } of all) {
      expect(err).toContain(`:${line}:${column}: ${message}`);
    }
  });

  it('is a doubt only, where no verdict hangs on it: told, and judged all the same', async () => {
    lab.keep('C-114');
    lab.add('demo');
    lab.edit('shared/constructions/C-114.yaml', (text) =>
      text
        .replace('mass: 905 g', 'mass: 90 g')
        .replace('category: trail', 'category: trail\nparent: C-110@1'),
    );
    lab.edit('shared/specifications/trail-casing.yaml', (text) =>
      text.replace('tail\n    protocol: pinch-up-down@1.0.0', 'tail\n    protocol: pinch-up-down@1.10'),
    );
    const { status, document } = await problems();
    // The pinned version is none that the run followed: its criterion is invalid, the rest is judged.
    expect(status).toBe(3);
    expect(document.verdict).toBe('invalid');
    expect(document.remarks.map(({ code }: { code: string }) => code)).toEqual([
      'implausible',
      'unknown-parent',
      'unknown-version',
    ]);
    expect(document.remarks[2].message).toContain('that protocol is here as "1.0.0" only');
    const { out } = await tirelab(['gate', lab.folder]);
    expect(out).toMatch(/Worth a look[\s\S]*90 g/);
  });
});
