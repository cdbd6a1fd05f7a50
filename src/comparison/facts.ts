import type { Construction, ImpactProtocol, Rig } from '../documents/kinds.ts';
import { plain } from '../quantity/amount.ts';
import type { Quantity } from '../quantity/quantity.ts';

/** One thing that one sample records of itself. */
export interface Fact {
  readonly name: string;
  readonly group: 'construction' | 'mounting' | 'conditions';
  /** As printed; null where nothing is recorded. */
  readonly shown: string | null;
  /** Where it is a number: compared by it, within the tolerance. */
  readonly value: number | null;
  readonly tolerance?: number | null;
  /** Where several tyres or drops bring values of their own: all of them. */
  readonly members?: readonly string[];
}

/** What the construction file says: its size and every leaf of its factors. */
export function constructionFacts({ size, factors }: Construction): Fact[] {
  const text = (name: string, shown: string | null): Fact => ({
    name,
    group: 'construction',
    shown,
    value: null,
  });
  return [text('size', size), ...Object.entries(factors).map(([path, value]) => text(path, value))];
}

/** Falling masses within this share of each other are the same mass (that of CONTRACT for a mass that differs). */
const MASS_SHARE = 0.005;

/** What the protocol and the rig lay down. */
export function conditionFacts(
  protocol: ImpactProtocol,
  rig: Rig | null,
  mass: number | null,
  pressure: Quantity | null,
): Fact[] {
  const text = (name: string, shown: string | null): Fact => ({
    name,
    group: 'conditions',
    shown,
    value: null,
  });
  const number = (name: string, value: number | null, unit: string, tolerance: number): Fact => ({
    ...text(name, value === null ? null : `${plain(value)} ${unit}`),
    value,
    tolerance,
  });
  const quantity = (name: string, of: Quantity | null, unit: string): Fact =>
    number(name, of?.value ?? null, unit, of === null ? 0 : toleranceOf(of));
  const { sites, step, levels } = protocol;
  const unit = protocol.vary === 'mass' ? 'kg' : 'mm';
  return [
    text('method', protocol.method),
    ...(protocol.start === null ? [] : [number('start', protocol.start, unit, 1e-9)]),
    ...(step === null ? [] : [text('step', stepText(step, unit))]),
    ...(levels === null ? [] : [text('levels', levels.map((level) => plain(level)).join(', '))]),
    number('falling mass', mass, 'kg', MASS_SHARE * (mass ?? 0)),
    quantity('planned pressure', pressure, 'bar'),
    text('energy definition', protocol.energy),
    text('failure criterion', protocol.failure),
    text('sites for a specimen', sites.perSpecimen === null ? null : String(sites.perSpecimen)),
    text('order of sites', sites.each),
    text('after a failure', protocol.afterFailure),
    text('rig', rig === null ? null : rig.config === null ? rig.id : `${rig.id}@${rig.config}`),
  ];
}

function stepText(step: NonNullable<ImpactProtocol['step']>, unit: string): string {
  return step.kind === 'additive' ? `${plain(step.size)} ${unit}` : `${plain(100 * step.ratio)} %`;
}

export function toleranceOf({ tolerance, value }: Quantity): number {
  if (tolerance === null) return 0;
  return tolerance.kind === 'absolute' ? tolerance.value : Math.abs(value) * tolerance.fraction;
}

/** The day of a time as its clock tells it. */
export function dayOf(time: string | null): string | null {
  return /^\d{4}-\d\d-\d\d/.exec(time ?? '')?.[0] ?? null;
}
