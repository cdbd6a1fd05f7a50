import { describe, expect, it } from 'vitest';
import { constructionFacts } from '../../src/comparison/facts.ts';
import { methodsTogether } from '../../src/comparison/refusals.ts';
import { factorStates } from '../../src/comparison/states.ts';
import type { Construction, ImpactProtocol } from '../../src/documents/kinds.ts';

const made = (factors: Record<string, string>, more: Partial<Construction> = {}) =>
  ({ size: '62-622', factors, declared: [], consequences: [], ...more }) as unknown as Construction;

function states(a: Construction, b: Construction, despite = new Map<string, string>()) {
  const all = factorStates([constructionFacts(a), constructionFacts(b)], [a, b], despite);
  return Object.fromEntries(all.map(({ name, state }) => [name, state]));
}

// The five states: TRADE practice "one variable at a time": common practice, no source.
describe('factor states', () => {
  it('calls a missing factor unknown, never equal', () => {
    expect(states(made({ bead: 'aramid' }), made({}))).toMatchObject({ size: 'equal', bead: 'unknown' });
    expect(states(made({}, { size: null }), made({}, { size: null })).size).toBe('unknown');
  });
  it('tells declared, consequence and differs apart', () => {
    const a = made({ 'casing.tpi': '60', mass: '905 g', bead: 'steel' });
    const b = made(
      { 'casing.tpi': '120', mass: '850 g', bead: 'aramid' },
      { declared: ['casing'], consequences: ['mass'] },
    );
    expect(states(a, b)).toMatchObject({ 'casing.tpi': 'declared', mass: 'consequence', bead: 'differs' });
  });
  it('assumes no consequence that nobody listed', () => {
    const a = made({ mass: '905 g' });
    expect(states(a, made({ mass: '850 g' }, { declared: ['casing'] })).mass).toBe('differs');
  });
  it('reads units, and masses within half a per cent as equal', () => {
    expect(states(made({ mass: '905 g' }), made({ mass: '0.905 kg' })).mass).toBe('equal');
    expect(states(made({ mass: '1000 g' }), made({ mass: '1004 g' })).mass).toBe('equal');
    expect(states(made({ mass: '1000 g' }), made({ mass: '1006 g' })).mass).toBe('differs');
    expect(states(made({ gauge: '1.00 mm' }), made({ gauge: '1.004 mm' })).gauge).toBe('differs');
  });
});

describe('refusals that no reason lifts', () => {
  const protocol = (method: string, start: number) =>
    ({ method, start, step: { kind: 'additive', size: 25 } }) as ImpactProtocol;
  it('refuses different methods, and compares rising heights from different starts by single hits alone', () => {
    const mixed = methodsTogether([protocol('up-and-down', 500), protocol('rising-height', 500)]);
    expect(mixed.refused).toHaveLength(1);
    const apart = methodsTogether([protocol('rising-height', 300), protocol('rising-height', 400)]);
    expect(apart.refused).toEqual([]);
    expect(apart.bySingleHits).toContain('different starts');
    const alike = { refused: [], bySingleHits: null };
    expect(methodsTogether([protocol('rising-height', 300), protocol('rising-height', 300)])).toEqual(alike);
    expect(methodsTogether([protocol('up-and-down', 300), protocol('up-and-down', 400)])).toEqual(alike);
  });
});
