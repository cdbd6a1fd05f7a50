import { describe, expect, it } from 'vitest';
import { tirelab } from './command.ts';

const RUNS = ['fixtures/demo/run.yaml', 'fixtures/demo-fail/run.yaml'];
const REASONS = ['--despite', 'day=both in one week', '--despite', 'mass=follows the cloth'];

describe('tirelab compare', () => {
  it('refuses with status 3 and names what differs', async () => {
    const { status, out } = await tirelab(['compare', ...RUNS]);
    expect(status).toBe(3);
    expect(out).toContain('Comparison refused');
    expect(out).toContain('2026-03-09 against 2026-03-10');
    expect(out).not.toContain('survives');
  });
  it('compares for stated reasons, which stay visible with what is unknown', async () => {
    const { status, out } = await tirelab(['compare', ...RUNS, ...REASONS]);
    expect(status).toBe(0);
    expect(out).toMatch(
      /C-115@1 survives 18 % less energy than C-114@2; 95 % calibrated interval 13 to\n24 % less/,
    );
    expect(out).toContain('despite: both in one week');
    expect(out).toContain('rim, tube');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
  it('adjusts all pairs of three constructions by Holm', async () => {
    const runs = [...RUNS, 'fixtures/demo-undecided/run.yaml'];
    const { status, out } = await tirelab(['compare', ...runs, ...REASONS, '--json']);
    expect(status).toBe(0);
    const { schema, pairs } = JSON.parse(out);
    expect(schema).toBe('tirelab.comparison/1');
    expect(pairs).toHaveLength(3);
    // Holm (1979): the least of three p-values is multiplied by three.
    const ps = pairs.map((pair: { p: number }) => pair.p);
    const least = ps.indexOf(Math.min(...ps));
    expect(pairs[least].holm).toBeCloseTo(3 * ps[least], 12);
  });
  it('prints Markdown and CSV', async () => {
    const csv = await tirelab(['compare', ...RUNS, ...REASONS, '--format', 'csv']);
    expect(csv.out.trim().split('\n')).toHaveLength(7);
    const markdown = await tirelab(['compare', ...RUNS, '--format', 'markdown']);
    expect(markdown.status).toBe(3);
    expect(markdown.out).toContain('### Comparison refused');
  });
  it('draws the constructions as shares of the first, in one HTML file, in both languages', async () => {
    const { status, out } = await tirelab(['compare', ...RUNS, ...REASONS, '--format', 'html']);
    expect(status).toBe(0);
    // The constructions against the first, and against the mass of their tyres.
    expect(out.match(/<svg/g)).toHaveLength(2);
    expect(out).toContain('C-115@1 survives 18');
    const german = await tirelab(['compare', ...RUNS, '--format', 'html', '--language', 'de']);
    expect(german.status).toBe(3);
    expect(german.out).toContain('Diese Prüfungen werden nicht verglichen');
    expect(german.out).not.toContain('<svg');
  });
  it('is wrong use with one run, an override without reason, or one of a factor that does not differ', async () => {
    expect((await tirelab(['compare', RUNS[0]!])).status).toBe(2);
    expect((await tirelab(['compare', ...RUNS, '--despite', 'day'])).status).toBe(2);
    expect((await tirelab(['compare', ...RUNS, '--despite', 'bead=none'])).status).toBe(2);
    expect((await tirelab(['compare', RUNS[0]!, 'fixtures/none.yaml'])).status).toBe(2);
  });
});
