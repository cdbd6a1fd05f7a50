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
  });
});
