import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import schedule from '../reference/ari-01/ARI-01-schedule.json' with { type: 'json' };
import { tirelab } from './command.ts';

const PROTOCOL = 'tests/cli/plan-drum.protocol.yaml';

const expected = (name: string): number => {
  const found = schedule.expected.find((entry) => entry.name === name);
  if (!found) throw new Error(`the case has no ${name}`);
  return found.value;
};

async function planned(args: readonly string[]) {
  const { status, out } = await tirelab(['plan', PROTOCOL, '--json', ...args]);
  return { status, plan: JSON.parse(out) };
}

// ARI-01: plain arithmetic; 5,000 km at 30 km/h.
describe('the plan of a drum test', () => {
  it('gives hours, revolutions, cleat hits and frequency of ARI-01', async () => {
    const { status, plan } = await planned([
      '--drum',
      '1.0 m',
      '--cleats',
      '2',
      '--circumference',
      '2105 mm',
    ]);
    const [block] = plan.blocks;
    expect(status).toBe(0);
    expect(block.hours).toBeCloseTo(expected('hours for 5000 km at 30 km/h'), 8);
    expect(block.days).toBeCloseTo(expected('days at 30 km/h, 24 h/day'), 8);
    expect(block.drumRevolutions).toBeCloseTo(expected('drum revs in 5000 km, D=1.0'), 3);
    expect(block.drumSpeed).toBeCloseTo(expected('drum rpm at 30 km/h, D=1.0'), 8);
    expect(block.cleatHits).toBeCloseTo(expected('cleat hits in 5000 km, D=1.0, 2 cleats'), 3);
    expect(block.cleatFrequency).toBeCloseTo(
      2 * expected('cleat frequency Hz at 30 km/h, 1 cleat, D=1.0'),
      8,
    );
    expect(block.tyreRevolutions).toBeCloseTo(expected('tyre revs in 5000 km, U=2.105 m'), 3);
  });

  it.each([
    ['1.219 m', 'D=1.219'],
    ['1707 mm', 'D=1.707'],
  ])('and of a drum of %s', async (drum, name) => {
    const { plan } = await planned(['--drum', drum]);
    expect(plan.blocks[0].drumRevolutions).toBeCloseTo(expected(`drum revs in 5000 km, ${name}`), 3);
    expect(plan.blocks[0].cleatHits).toBeNull();
  });

  it('says when it is done, by the hours of each day', async () => {
    // 166.67 h at 20 h a day: eight full days and 6.67 h of the ninth.
    const { plan } = await planned(['--duty', '20 h', '--begin', '2026-03-02']);
    expect(plan.total.end).toBe('2026-03-10T06:40:00Z');
    expect((await planned(['--begin', '2026-03-02'])).plan.total.end).toBe('2026-03-08T22:40:00Z');
  });

  it('says when the tyres are looked at, and what the protocol asks beside', async () => {
    const { out } = await tirelab([
      'plan',
      'protocols/drum-two-block.yaml',
      '--json',
      '--begin',
      '2026-03-02',
    ]);
    const plan = JSON.parse(out);
    // 100 km at 25 km/h, then 900 km at 30 km/h: 4 h and 30 h. The end, 5,000 km, is none of the looks.
    expect(plan.inspections.slice(0, 2)).toEqual([
      { at: 100, hours: 4, time: '2026-03-02T04:00:00Z' },
      { at: 1000, hours: 34, time: '2026-03-03T10:00:00Z' },
    ]);
    expect(plan.inspections).toHaveLength(5);
    expect(plan.rules.join(' ')).toContain('at most 3 of 60 min or more');
  });

  it("makes a distance of revolutions by the rig's drum, and asks for the drum where none is known", async () => {
    const folder = mkdtempSync(join(tmpdir(), 'drum-plan-'));
    const protocol = join(folder, 'protocol.yaml');
    const rig = join(folder, 'rig.yaml');
    // ARI-01: revolutions of a drum of 1 m in 5,000 km.
    const revolutions = Math.round(expected('drum revs in 5000 km, D=1.0'));
    const block = `{ block: all, revolutions: ${revolutions}, speed: 30 km/h, load: 650 N }`;
    writeFileSync(
      protocol,
      `format: tirelab.protocol/1\nid: by-turns\nversion: 1.0.0\nkind: endurance\nschedule: [${block}]\n`,
    );
    writeFileSync(rig, 'format: tirelab.rig/1\nid: drum-3\ndrum: { diameter: 1.0 m, cleats: 2 }\n');
    const plan = JSON.parse((await tirelab(['plan', protocol, '--rig', rig, '--json'])).out);
    expect(plan.blocks[0].distance).toBeCloseTo(5000, 2);
    expect(plan.blocks[0].cleatHits).toBeCloseTo(2 * revolutions, 3);
    const { status, err } = await tirelab(['plan', protocol]);
    expect([status, err]).toEqual([2, expect.stringContaining('protocol.yaml:5:')]);
    expect(err).toContain('drum.diameter');
    rmSync(folder, { recursive: true });
  });

  it('prints it within 80 columns, and refuses what is no quantity or no day', async () => {
    const { out } = await tirelab(['plan', PROTOCOL, '--drum', '1.7 m', '--begin', '2026-03-02']);
    expect(out).toContain('5000 km in 166.7 h of running');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    for (const wrong of [
      ['--drum', '1.7'],
      ['--duty', '25 h'],
      ['--begin', 'monday'],
    ]) {
      const { status, err } = await tirelab(['plan', PROTOCOL, ...wrong]);
      expect(status).toBe(2);
      expect(err).toContain(wrong[0]);
    }
    const { err } = await tirelab(['plan', PROTOCOL, '--drum', '1.7', '--begin', 'monday']);
    expect(err).toContain('--drum');
    expect(err).toContain('--begin');
  });
});
