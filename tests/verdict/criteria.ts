// Invented criteria and evidence for the tests of this room.
import type { Criterion } from '../../src/documents/kinds.ts';
import type { Evidence } from '../../src/verdict/evidence.ts';

export const atLeast45: Criterion = {
  id: 'median',
  protocol: { id: 'pinch-up-down', version: '1.0.0' },
  quantity: 'medianFailureEnergy',
  probability: null,
  at: null,
  limit: { atLeast: 45, unit: 'J' },
  rule: 'lower-bound',
  confidence: 0.95,
  guard: null,
  minSpecimens: null,
  method: 'censored-likelihood',
  each: false,
  external: null,
  safety: false,
};

export function evidence(given: Partial<Evidence> = {}): Evidence {
  return {
    status: 'valid',
    estimate: 47,
    standardError: 1,
    lower: 45.4,
    upper: 48.6,
    method: 'censored-likelihood',
    interval: 'profile-likelihood',
    specimens: 30,
    why: null,
    ...given,
  };
}
