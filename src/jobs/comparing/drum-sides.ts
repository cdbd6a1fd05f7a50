import type { Fact } from '../../comparison/facts.ts';
import type { Side } from '../../comparison/side.ts';
import { tyreFacts } from '../../comparison/tyre-facts.ts';
import type { Construction, EnduranceBlock, EnduranceProtocol, Rig } from '../../documents/kinds.ts';
import type { TyreLife } from '../../endurance/life/lives.ts';
import { constructionsByName } from '../../impact/replay/tyres.ts';
import type { Specimen } from '../../logs/register.ts';
import { plain } from '../../quantity/amount.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { drumEvidence } from '../drum-evidence.ts';
import type { EnduranceTest } from '../endurance-test.ts';
import { refusedFor, sideHead } from './side-head.ts';

/** The lives of a drum test by construction: one side for each that the table of specimens tells. */
export function drumSides(test: EnduranceTest, path: string): Side[] {
  const rows = new Map(test.register?.specimens.map((row) => [row.specimen, row]));
  const named = constructionsByName(test.constructions);
  const only = test.constructions.length === 1 ? test.constructions[0]! : null;
  const groups = new Map<
    string,
    { construction: Construction | null; role: 'candidate' | 'reference'; lives: TyreLife[] }
  >();
  const { lives, conformance } = drumEvidence(test);
  for (const life of lives) {
    const row = rows.get(life.specimen) ?? null;
    if (row?.role === 'spare') continue;
    const construction = (row?.construction ? named.get(row.construction) : undefined) ?? only;
    const role = row?.role === 'reference' ? 'reference' : 'candidate';
    const key = `${role}\n${construction?.id ?? ''}\n${construction?.revision ?? ''}`;
    const group = groups.get(key) ?? { construction, role, lives: [] };
    groups.set(key, group);
    group.lives.push(life);
  }
  const obstacle = conformance.status === 'invalid' ? conformance.why : null;
  return [...groups.values()].map(({ construction, role, lives: own }): Side => {
    const specimens = own.map(({ specimen }) => rows.get(specimen) ?? null);
    const tyres = { specimens, mountings: [], drops: [], pressure: null, temperature: null };
    const failures = own.filter(({ failed }) => failed).length;
    const known = { run: test.run, path, role, specimens: own.length, drops: 0, failures };
    return {
      ...sideHead(known, construction, specimens, [
        ...drumConditions(test.protocol, test.rig),
        ...registered(tyreFacts(tyres), specimens),
      ]),
      looks: own,
      observations: null,
      tyres,
      calibrated: null,
      single: 'lives are no single hits',
      refused: refusedFor(construction, obstacle),
    };
  });
}

/** Of a drum test there are no drops: what only drops tell is not asked for. */
function registered(facts: readonly Fact[], specimens: readonly (Specimen | null)[]): Fact[] {
  const ofDrops = new Set(['operator', 'day', 'mean pressure', 'mean temperature']);
  const known = facts.filter(({ name }) => !ofDrops.has(name));
  return specimens.length === 0 ? [] : known;
}

/** What the schedule and the rig lay down: every block with its load, speed, pressure and temperature. */
function drumConditions({ schedule }: EnduranceProtocol, rig: Rig | null): Fact[] {
  const text = (name: string, shown: string | null): Fact => ({
    name,
    group: 'conditions',
    shown,
    value: null,
  });
  return [
    text('schedule', schedule.map(blockText).join('; ')),
    text('rig', rig === null ? null : rig.config === null ? rig.id : `${rig.id}@${rig.config}`),
  ];
}

function blockText(block: EnduranceBlock): string {
  const quantity = (of: Quantity | null, unit: string) => (of === null ? [] : [`${plain(of.value)} ${unit}`]);
  const length = block.distance === null ? [] : [`${plain(block.distance)} km`];
  return [
    block.block,
    ...length,
    ...quantity(block.speed, 'km/h'),
    ...quantity(block.load, 'N'),
    ...quantity(block.pressure, 'bar'),
    ...quantity(block.temperature, '°C'),
  ].join(' ');
}
