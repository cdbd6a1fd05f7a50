import type { Rig, RigConfiguration } from '../documents/kinds.ts';

/** `id@config` of a rig as it stood, or its id where its configurations have no names; null for no rig. */
export function rigName(rig: Rig | null | undefined): string | null {
  if (rig == null) return null;
  return rig.config === null ? rig.id : `${rig.id}@${rig.config}`;
}

/**
 * A rig in each of its configurations, the earliest first. One that never changed, or whose file does not say when, is
 * itself in all of them.
 */
export function statesOf(rig: Rig): readonly Rig[] {
  const configurations = rig.configurations ?? [];
  if (configurations.length < 2) return [rig];
  return configurations.map(({ config, mass, provenMass }) => ({ ...rig, config, mass, provenMass }));
}

/**
 * Place of the configuration that holds on a day (`2026-03-09`); null where none does. A configuration without a last
 * day ends where the next one begins.
 */
export function configurationOn(configurations: readonly RigConfiguration[], day: string): number | null {
  const at = configurations.findLastIndex(({ from }) => from === null || from <= day);
  if (at < 0) return null;
  const { to } = configurations[at]!;
  return to !== null && day > to ? null : at;
}

/** Whether a rig's file says when it stood how, so that the day of a drop matters. */
export function isDated({ configurations = [] }: Rig): boolean {
  return configurations.length > 1 || configurations.some(({ from, to }) => from !== null || to !== null);
}
