import type { ImpactProtocol, Rig, Specification } from '../documents/kinds.ts';
import { hitsAllowed } from '../impact/rules/method-rules.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { energyScale, potentialEnergy } from '../rig/energy.ts';
import type { Gravity } from '../rig/gravity.ts';
import type { Design } from '../simulation/design.ts';

/** A design with the numbers that results print of it. */
export interface DesignedTest extends Design {
  /** kg; null where the protocol varies the mass. */
  readonly mass: number | null;
  readonly gravity: Gravity;
  readonly notes: readonly string[];
}

/**
 * Makes a protocol ready to be simulated: what its energies are, which criteria it gives evidence for.
 *
 * @throws InputError for a protocol that has no end, no mass, or sites that cannot be simulated; with every problem
 */
export function designOf(
  protocol: ImpactProtocol,
  rig: Rig | null,
  specification: Specification | null,
): DesignedTest {
  // Kinetic series are simulated as free falls, whose energy is that of the height.
  const { gravity, statedMass, definition } = energyScale(protocol, rig, [], new Set(['velocity']));
  const byMass = protocol.vary === 'mass';
  const problems = [
    ...withoutEnd(protocol),
    ...(statedMass === null && !byMass ? [withoutMass(protocol)] : []),
    ...seriesPerSite(protocol),
  ];
  const judged = specification && evidenced(specification, protocol, problems);
  if (problems.length > 0) throw new InputError(problems);
  const notes = [
    ...(definition === 'kinetic'
      ? ['kinetic energy is simulated as that of a free fall without friction']
      : []),
    ...(judged?.notes ?? []),
  ];
  return {
    protocol,
    rig,
    specification: judged?.specification ?? null,
    energyPerLevel: byMass
      ? potentialEnergy(1, gravity.value, protocol.height!)
      : potentialEnergy(statedMass!.value, gravity.value, 1),
    mass: byMass ? null : statedMass!.value,
    gravity,
    notes,
  };
}

/** Whether a specimen is hit once at most, so that it does not matter where its strength varies. */
export function isHitOnce(protocol: ImpactProtocol): boolean {
  return protocol.sites.each === 'new-spot' && hitsAllowed(protocol) === 1;
}

function withoutEnd(protocol: ImpactProtocol): Problem[] {
  const { stop, method, perLevel } = protocol;
  if (stop !== null || (method === 'fixed-level' && perLevel !== null)) return [];
  const example = method === 'rising-height' ? '{ specimens: 10 }' : '{ drops: 30 }';
  const message = `found no stop rule, expected one: a test without end can neither be simulated nor planned; add stop: ${example}`;
  return [problemAt(protocol, 'method', 'protocol-cannot-stop', message)];
}

function withoutMass(protocol: ImpactProtocol): Problem {
  const message =
    'found no falling mass, neither here nor in a rig, expected one, such as mass: 8.000 kg; add it, or give --rig';
  return problemAt(protocol, 'method', 'mass-missing', message);
}

/** Where each site is a series of its own, specimens do not end an up-and-down series: it needs a count of drops. */
function seriesPerSite(protocol: ImpactProtocol): Problem[] {
  const { sites, method, stop } = protocol;
  if (sites.each !== 'series-per-site' || method === 'rising-height' || method === 'fixed-level') return [];
  if (stop === null || stop.drops !== undefined || stop.reversals !== undefined || stop.atMost !== undefined)
    return [];
  const message =
    'found no count that ends the series of a site, expected drops or reversals beside specimens: such as stop: { drops: 20, specimens: 3 }';
  return [problemAt(protocol, 'stop', 'protocol-cannot-stop', message)];
}

/** The criteria that a simulated test speaks to; the others are named in a note. */
function evidenced(
  specification: Specification,
  protocol: ImpactProtocol,
  problems: Problem[],
): { specification: Specification; notes: string[] } {
  const isOurs = (criterion: Specification['criteria'][number]) =>
    !criterion.each && criterion.external === null && criterion.protocol?.id === protocol.id;
  const criteria = specification.criteria.filter(isOurs);
  const pinned = criteria.filter(
    (criterion) => criterion.protocol?.version && criterion.protocol.version !== protocol.version,
  );
  const at = (key: readonly (string | number)[]) => specification.source.locate(key);
  for (const criterion of pinned) {
    problems.push({
      file: specification.source.path,
      ...at(['criteria', specification.criteria.indexOf(criterion), 'protocol']),
      code: 'protocol-version-differs',
      message: `found ${criterion.protocol!.id}@${criterion.protocol!.version}, expected version ${protocol.version}, which is simulated; correct one of them`,
    });
  }
  if (criteria.length === 0) {
    problems.push({
      file: specification.source.path,
      ...at(['criteria']),
      code: 'no-criterion',
      message: `found no criterion that rests on protocol ${protocol.id}, expected one; name the protocol in a criterion, or leave --spec out`,
    });
  }
  const others = specification.criteria.filter((criterion) => !isOurs(criterion)).map(({ id }) => id);
  const notes =
    others.length > 0
      ? [`criteria that this protocol does not speak to are left out: ${others.join(', ')}`]
      : [];
  return { specification: { ...specification, criteria }, notes };
}

function problemAt(protocol: ImpactProtocol, key: string, code: string, message: string): Problem {
  return { file: protocol.source.path, ...protocol.source.locate([key]), code, message };
}
