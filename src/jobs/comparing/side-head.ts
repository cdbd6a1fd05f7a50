import { constructionFacts, type Fact } from '../../comparison/facts.ts';
import type { Side } from '../../comparison/side.ts';
import type { Construction } from '../../documents/kinds.ts';
import type { Specimen } from '../../logs/register.ts';
import type { ComparedSample } from '../../result/comparison.ts';
import { tyreMass } from './tyre-mass.ts';

/** What is known of a sample before its evidence. */
type Known = Pick<ComparedSample, 'run' | 'path' | 'role' | 'specimens' | 'drops' | 'failures'>;

/**
 * What a side has of its construction and its tyres, of drop and drum tests alike; the facts of the construction come
 * before those of the test.
 *
 * @param construction null where nobody says of which the tyres are
 */
export function sideHead(
  known: Known,
  construction: Construction | null,
  specimens: readonly (Specimen | null)[],
  facts: readonly Fact[],
): Pick<Side, 'sample' | 'declared' | 'consequences' | 'facts'> {
  return {
    sample: {
      label: '',
      run: known.run,
      path: known.path,
      paths: [known.path],
      construction: { id: construction?.id ?? 'unknown', revision: construction?.revision ?? '' },
      role: known.role,
      specimens: known.specimens,
      drops: known.drops,
      failures: known.failures,
      mass: tyreMass(specimens, construction),
    },
    declared: construction?.declared ?? [],
    consequences: construction?.consequences ?? [],
    facts: [...(construction === null ? [] : constructionFacts(construction)), ...facts],
  };
}

/** Why a side of no known construction may not be compared, or what stands against its own evidence; null as a rule. */
export function refusedFor(construction: Construction | null, ownObstacle: string | null): string | null {
  return construction === null ? 'its tyres are of no known construction' : ownObstacle;
}
