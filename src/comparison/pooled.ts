import type { ComparedFactor } from '../result/comparison.ts';
import type { LawName } from '../statistics/law.ts';
import { laws } from '../statistics/laws/laws.ts';
import { equalMedians } from './pair.ts';
import type { Side } from './side.ts';
import { factorStates } from './states.ts';
import { tyreFacts } from './tyre-facts.ts';

/** Runs of one construction put together, or why they may not be. */
export interface Pooled {
  readonly sides: readonly Side[];
  readonly refused: readonly string[];
  readonly notes: readonly string[];
}

/**
 * Puts the samples of one construction from several runs together, where nothing but what was put aside differs between
 * them. Whether they agree is tested and told: the likelihood ratio of equal medians against the first run.
 */
export function poolSides(
  sides: readonly Side[],
  despite: ReadonlyMap<string, string>,
  law: LawName,
): Pooled {
  const groups = groupsOf(sides);
  const pooled: Side[] = [];
  const refused: string[] = [];
  const notes: string[] = [];
  for (const group of groups) {
    const [first, ...others] = group;
    if (others.length === 0) {
      pooled.push(first!);
      continue;
    }
    const name = nameOf(first!);
    const factors = factorStates(
      group.map(({ facts }) => facts),
      [],
      despite,
    );
    refused.push(...differing(factors).map((what) => `runs of ${name} cannot be pooled: ${what}`));
    for (const other of others) notes.push(...agreement(first!, other, law));
    pooled.push(together(group));
  }
  return { sides: pooled, refused, notes };
}

function groupsOf(sides: readonly Side[]): Side[][] {
  const groups = new Map<string, Side[]>();
  for (const side of sides) {
    const { construction, role } = side.sample;
    const key = JSON.stringify([construction.id, construction.revision, role]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [side]);
    else group.push(side);
  }
  return [...groups.values()];
}

function nameOf({ sample: { construction } }: Side): string {
  return `${construction.id}@${construction.revision}`;
}

function differing(factors: readonly ComparedFactor[]): string[] {
  return factors
    .filter(({ state, despite }) => state === 'differs' && despite === null)
    .map(
      ({ name, values }) =>
        `${name} differs: ${values.map((value) => value ?? 'not recorded').join(' against ')}`,
    );
}

function agreement(first: Side, other: Side, law: LawName): string[] {
  const found = equalMedians(first.looks, other.looks, laws[law]);
  const runs = `runs ${first.sample.run ?? first.sample.path} and ${other.sample.run ?? other.sample.path} of ${nameOf(first)}`;
  return found === null || found.p === null
    ? [`${runs} are pooled; whether they agree cannot be tested`]
    : [`${runs} are pooled; that their medians agree has p = ${found.p.toPrecision(2)}`];
}

function together(group: readonly Side[]): Side {
  const [first] = group;
  const sum = (of: (side: Side) => number) => group.reduce((total, side) => total + of(side), 0);
  const tyres = {
    ...first!.tyres,
    specimens: group.flatMap((side) => side.tyres.specimens),
    mountings: group.flatMap((side) => side.tyres.mountings),
    drops: group.flatMap((side) => side.tyres.drops),
  };
  const own = new Map(tyreFacts(tyres).map((fact) => [fact.name, fact]));
  const masses = group.map(({ sample }) => sample.mass);
  return {
    ...first!,
    sample: {
      ...first!.sample,
      paths: group.flatMap(({ sample }) => sample.paths),
      specimens: sum(({ sample }) => sample.specimens),
      drops: sum(({ sample }) => sample.drops),
      failures: sum(({ sample }) => sample.failures),
      mass: masses.every((mass) => mass !== null)
        ? sum(({ sample }) => sample.mass! * sample.specimens) / sum(({ sample }) => sample.specimens)
        : null,
    },
    looks: group.flatMap(({ looks }) => looks),
    observations: group.some(({ observations }) => observations === null)
      ? null
      : group.flatMap(({ observations }) => observations!),
    facts: first!.facts.map((fact) => own.get(fact.name) ?? fact),
    tyres,
    // No single test that a simulation could repeat.
    calibrated: null,
    single: 'several runs are pooled',
    refused: group.find(({ refused }) => refused !== null)?.refused ?? null,
  };
}
