import { describe, expect, it } from 'vitest';
import { CATALOGUE, catalogued, codeIn } from '../../src/conformance/catalogue/catalogue.ts';
import { DROP_CATALOGUE } from '../../src/conformance/catalogue/drop.ts';

describe('the catalogue', () => {
  it('has DROP-01 to DROP-56, each once, in order', () => {
    const codes = Array.from({ length: 56 }, (_, index) => `DROP-${String(index + 1).padStart(2, '0')}`);
    expect(DROP_CATALOGUE.map(({ code }) => code)).toEqual(codes);
  });

  it('says of each what it is and what it does, without a full stop, each title once', () => {
    for (const { title, effect } of CATALOGUE.values()) {
      expect(title).toMatch(/^[a-z].*[^.]$/u);
      expect(effect).toMatch(/^[a-zA-Z].*[^.]$/u);
    }
    expect(new Set([...CATALOGUE.values()].map(({ title }) => title)).size).toBe(CATALOGUE.size);
  });

  // Severity and scope by CONTRACT: invalid only for run or comparison; DROP-11 minor, DROP-54 minor.
  it('keeps what the contract says of severities', () => {
    expect(catalogued('DROP-11')).toMatchObject({ severity: 'minor', scope: 'drop' });
    expect(catalogued('DROP-54')).toMatchObject({ severity: 'minor', excuses: false });
    expect(catalogued('DROP-31')).toMatchObject({ severity: 'invalidating', scope: 'drop' });
    expect(catalogued('DROP-33')).toMatchObject({ severity: 'invalidating', scope: 'drop' });
  });

  it('finds a code in what a technician wrote', () => {
    expect(codeIn('DROP-16')).toBe('DROP-16');
    expect(codeIn('double hit, drop-16')).toBe('DROP-16');
    expect(codeIn('drop 16')).toBeNull();
    expect(codeIn('DROP-161')).toBeNull();
  });
});
