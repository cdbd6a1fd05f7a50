import type { UncertaintySource } from '../../documents/uncertainty-source.ts';
import type { Budget, Component } from '../../statistics/uncertainty/budget.ts';
import { dropEnergyBudget, type Effect } from '../../statistics/uncertainty/drop-energy.ts';

/** What a drop is made with. */
export interface DropSetting {
  /** kg */
  readonly mass: number;
  /** m/s² */
  readonly gravity: number;
  /** bar, as set; null where no protocol says. */
  readonly pressure: number | null;
}

/** What the sources of a rig speak of, so far as the setting lets them: an effect of pressure needs a pressure. */
export function sourcesInUse(
  sources: readonly UncertaintySource[],
  { pressure }: DropSetting,
): { readonly used: readonly UncertaintySource[]; readonly notes: readonly string[] } {
  const unused = pressure === null && sources.some(({ of }) => of === 'pressure');
  return {
    used: unused ? sources.filter(({ of }) => of !== 'pressure') : sources,
    notes: unused ? ['the uncertainty of the pressure is left out: the protocol sets no pressure'] : [],
  };
}

/**
 * The uncertainty of the energy of one drop at an energy in J: m·g·h less what friction takes, and the energy to failure by the
 * sensitivities to pressure (∂E = s·E·∂p/p) and temperature (∂E = s·E·∂T), which TRADE-wise are about 1 and 0.5 % per kelvin
 * (common practice, no source).
 *
 * @param sources in use, see sourcesInUse
 */
export function dropBudget(
  sources: readonly UncertaintySource[],
  { mass, gravity, pressure }: DropSetting,
  energy: number,
): Budget {
  const of = (input: UncertaintySource['of'], scale = 1): Component[] =>
    sources.filter((each) => each.of === input).map((each) => component(each, scale));
  const conditions = sources.filter((each) => each.sensitivity !== null);
  const effects = conditions.map(
    (each): Effect => ({
      name: each.of,
      slope: (each.sensitivity! * energy) / (each.of === 'pressure' ? pressure! : 1),
      components: [component(each)],
    }),
  );
  return dropEnergyBudget({
    mass: { value: mass, components: of('mass') },
    gravity: { value: gravity, components: of('gravity') },
    height: { value: energy / (mass * gravity), components: of('height', 1e-3) },
    efficiency: { value: 1, components: of('loss') },
    effects,
  });
}

function component({ source, standardUncertainty, degrees, scope }: UncertaintySource, scale = 1): Component {
  return {
    name: source,
    standardUncertainty: scale * standardUncertainty,
    degrees,
    scope: scope === 'drop' ? 'scatter' : 'common',
  };
}
