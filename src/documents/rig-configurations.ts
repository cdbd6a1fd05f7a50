import { quote } from '../problem/echo.ts';
import { block, optional } from './blocks.ts';
import { day, name, prose, quantity } from './fields.ts';
import type { Findings } from './findings.ts';
import type { ProvenMass, RigConfiguration } from './kinds.ts';
import { once } from './once.ts';
import type { Fields } from './read-fields.ts';
import type { Path } from './yaml-value.ts';

/** The share up to which a proven mass is an error of the stated one. Beyond it the rig is another one. */
const SMALL = 0.01;

/** What a configuration of a rig says beside its name: at the top of a rig's file, or in each of its configurations. */
export const stateShape = once(() => ({
  from: optional(day('First day on which the rig stood so.')),
  to: optional(day('Last day on which it stood so.')),
  mass: optional(
    quantity('kg', 'Falling mass: carriage, striker and all that falls with them.', {
      above: 0,
    }),
  ),
  provenMass: optional(
    block(
      {
        mass: quantity('kg', 'Falling mass as it was found to be.', { above: 0 }),
        by: name('What shows it: a certificate, a weighing.'),
        on: day('When it was found.'),
      },
      'A falling mass that was found to differ from the stated one, by at most 1 %: energies are corrected, and the correction is listed.',
    ),
  ),
  striker: optional(prose('What strikes or is struck, in words: shape, width, edge radius.')),
}));

/** One entry of `configurations`. */
export const configurationShape = once(() => ({
  config: name('Name of the configuration; drops made on it are of rig@config.'),
  ...stateShape(),
}));

type StateFields = Fields<ReturnType<typeof stateShape>>;

export function configurationOf(config: string | null, fields: StateFields): RigConfiguration {
  const { from, to, mass, provenMass, striker } = fields;
  return {
    config,
    from: from ?? null,
    to: to ?? null,
    mass: mass ?? null,
    provenMass: (provenMass as ProvenMass | undefined) ?? null,
    striker: striker ?? null,
  };
}

/** Finds what contradicts itself within one configuration. */
export function checkState(fields: StateFields, path: Path, findings: Findings): void {
  const { from, to, mass, provenMass } = fields;
  if (from !== undefined && to !== undefined && to < from) {
    const message = `found ${to}, expected a day not before "from", ${from}; correct one of them`;
    findings.add([...path, 'to'], 'dates-not-ordered', message);
  }
  if (provenMass === undefined) return;
  const at = [...path, 'provenMass'];
  if (mass === undefined) {
    const message =
      'found a proven mass and no mass that it corrects; add "mass", or state this one as "mass"';
    findings.add(at, 'missing-key', message, 'key');
  } else if (Math.abs(provenMass.mass.value - mass.value) > SMALL * mass.value) {
    const message = `found ${provenMass.mass.text} beside a mass of ${mass.text}, expected at most 1 % between them; so large a change is another configuration: give it an entry in "configurations"`;
    findings.add([...at, 'mass'], 'mass-too-far', message);
  }
}

/** Finds configurations that do not follow one another, so that a drop could be of two. */
export function checkOrder(configurations: readonly RigConfiguration[], findings: Findings): void {
  for (const [i, { config, from }] of configurations.entries()) {
    const at = ['configurations', i];
    const before = configurations[i - 1];
    if (configurations.findIndex((other) => other.config === config) < i) {
      const message = `found the configuration ${quote(config ?? '')} twice, expected names that differ; rename one`;
      findings.add([...at, 'config'], 'duplicate-id', message);
    }
    if (before === undefined) continue;
    if (from === null) {
      if (findings.valueAt([...at, 'from']) !== undefined) continue;
      const message =
        'found no first day, expected one where another configuration stands before; add "from"';
      findings.add(at, 'missing-key', message);
    } else if ((before.from !== null && from <= before.from) || (before.to !== null && from <= before.to)) {
      const message = `found ${from}, expected a day after the configuration before it began and ended: a drop would be of both; correct it`;
      findings.add([...at, 'from'], 'two-ways', message);
    }
  }
}
