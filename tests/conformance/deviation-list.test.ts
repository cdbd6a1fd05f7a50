import { describe, expect, it } from 'vitest';
import { DeviationList } from '../../src/conformance/deviation-list.ts';
import { conformanceStatus } from '../../src/conformance/status.ts';

const NOTHING_OUT = { dropsOut: 0, drops: 30, specimensOut: 0, specimens: 30 };

describe('the list of deviations', () => {
  const with25 = () => {
    const list = new DeviationList();
    for (let line = 26; line >= 2; line--) {
      list.add({ code: 'DROP-21', file: 'a.csv', line, found: () => `line ${line}` });
    }
    list.add({ code: 'DROP-10', file: 'a.csv', found: () => 'too few' });
    return list;
  };

  it('keeps the first 20 of a code and sums up the rest: count, first and last line (CONTRACT)', () => {
    const listed = with25().listed();
    expect(listed.filter(({ code, count }) => code === 'DROP-21' && count === 1)).toHaveLength(20);
    expect(listed.at(-1)).toMatchObject({
      code: 'DROP-21',
      count: 5,
      firstLine: 2,
      lastLine: 6,
      severity: 'minor',
    });
    expect(listed.reduce((sum, { count }) => sum + count, 0)).toBe(26);
  });

  it('stands in the order of lines, what concerns the run behind', () => {
    const lines = with25()
      .listed()
      .map(({ line }) => line);
    expect(lines.slice(0, 3)).toEqual([7, 8, 9]);
    expect(lines[20]).toBeNull();
  });

  it('makes a sentence of what was found and what it does', () => {
    const list = new DeviationList();
    list.add({ code: 'DROP-16', found: () => 'two peaks' });
    expect(list.listed()[0]!.message).toBe('two peaks; the drop is left out of the estimate.');
  });

  it('does not build sentences that are not listed', () => {
    const list = new DeviationList();
    let built = 0;
    for (let line = 1; line <= 1000; line++) {
      list.add({
        code: 'DROP-21',
        line,
        found: () => {
          built += 1;
          return '';
        },
      });
    }
    expect(built).toBe(20);
  });

  it('knows no code that is not in the catalogue', () => {
    expect(() => new DeviationList().add({ code: 'DROP-99', found: () => '' })).toThrow(RangeError);
  });
});

describe('conformance status (CONTRACT)', () => {
  const of = (
    severity: 'note' | 'minor' | 'invalidating',
    scope: 'drop' | 'specimen' | 'run' | 'comparison',
    out = NOTHING_OUT,
  ) => {
    const list = new DeviationList();
    list.add({ code: 'DROP-21', severity, scope, found: () => '' });
    return conformanceStatus(list, out).status;
  };

  it('is conforming with nothing, or notes only', () => {
    expect(conformanceStatus(new DeviationList(), NOTHING_OUT)).toEqual({ status: 'conforming', why: null });
    expect(of('note', 'run')).toBe('conforming');
  });

  it('is deviating from one minor deviation, or one drop out', () => {
    expect(of('minor', 'run')).toBe('deviating');
    expect(of('invalidating', 'drop')).toBe('deviating');
    expect(of('invalidating', 'specimen')).toBe('deviating');
    expect(conformanceStatus(new DeviationList(), { ...NOTHING_OUT, dropsOut: 1 }).status).toBe('deviating');
  });

  it('is invalid for a run or comparison, beyond a fifth of the drops, beyond a third of the specimens', () => {
    expect(of('invalidating', 'run')).toBe('invalid');
    expect(of('invalidating', 'comparison')).toBe('invalid');
    expect(of('minor', 'drop', { ...NOTHING_OUT, dropsOut: 6 })).toBe('deviating');
    expect(of('minor', 'drop', { ...NOTHING_OUT, dropsOut: 7 })).toBe('invalid');
    expect(of('minor', 'drop', { ...NOTHING_OUT, specimensOut: 10 })).toBe('deviating');
    expect(of('minor', 'drop', { ...NOTHING_OUT, specimensOut: 11 })).toBe('invalid');
  });
});
