import type { Drop } from '../logs/drop.ts';
import type { Mounting } from '../logs/mountings.ts';
import { registerCell, type Specimen } from '../logs/register.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { dayOf, type Fact, toleranceOf } from './facts.ts';

/** What is told of the tyres behind a sample and of their drops. */
export interface TyreSources {
  /** The row of each tyre; null where the register has none. */
  readonly specimens: readonly (Specimen | null)[];
  /** The mounting of each drop; null where none is known. */
  readonly mountings: readonly (Mounting | null)[];
  readonly drops: readonly Drop[];
  readonly pressure: Quantity | null;
  readonly temperature: Quantity | null;
}

/** Columns of the register that may go together with the construction. */
const REGISTERED = ['batch', 'cured', 'factory', 'line', 'shift', 'mould', 'date code'] as const;

/** Columns that are asked for though no sample has them: what nobody recorded is not shown to be equal. */
const ALWAYS = new Set(['batch', 'rim', 'tube', 'operator', 'day']);

/** Where the protocol states no tolerance of the temperature, K: common practice, no source. */
const TEMPERATURE_TOLERANCE = 2;

/** What differs from tyre to tyre or from drop to drop: a fact is known only where every tyre or drop records it. */
export function tyreFacts({ specimens, mountings, drops, pressure, temperature }: TyreSources): Fact[] {
  const registered = REGISTERED.map((name) =>
    fact(
      name,
      'construction',
      specimens.map((row) => row && registerCell(row, name)),
    ),
  );
  const mounted = (name: string, of: (mounting: Mounting) => string | number | null) => {
    const values = mountings
      .map((mounting) => mounting && of(mounting))
      .map((value) => (value === null ? null : String(value)));
    return fact(name, 'mounting', values);
  };
  return [
    ...registered,
    mounted('rim', ({ rim }) => rim),
    mounted('rim width', ({ rimWidth }) => rimWidth),
    mounted('rim type', ({ rimType }) => rimType),
    mounted('tube', ({ tube }) => tube),
    mounted('tube material', ({ tubeMaterial }) => tubeMaterial),
    mounted('tube batch', ({ tubeBatch }) => tubeBatch),
    mounted('sealant', ({ sealant }) => sealant),
    mounted('insert', ({ insert }) => insert),
    fact(
      'operator',
      'conditions',
      drops.map(({ operator }) => operator),
    ),
    fact(
      'day',
      'conditions',
      drops.map(({ time }) => dayOf(time)),
    ),
    measured(
      'mean pressure',
      drops.map((drop) => drop.pressure),
      'bar',
      pressure ? toleranceOf(pressure) : 0,
    ),
    measured(
      'mean temperature',
      drops.map((drop) => drop.temperature),
      '°C',
      temperature?.tolerance ? toleranceOf(temperature) : TEMPERATURE_TOLERANCE,
    ),
  ].filter(({ name, shown }) => shown !== null || ALWAYS.has(name) || name.startsWith('mean '));
}

function fact(name: string, group: Fact['group'], values: readonly (string | null)[]): Fact {
  const isWhole = values.length > 0 && values.every((value) => value !== null && value.trim() !== '');
  if (!isWhole) return { name, group, shown: null, value: null };
  const members = [...new Set(values as string[])].sort();
  return { name, group, shown: members.join(', '), value: null, members };
}

function measured(name: string, values: readonly (number | null)[], unit: string, tolerance: number): Fact {
  const isWhole = values.length > 0 && values.every((value) => value !== null);
  const value = isWhole ? (values as number[]).reduce((sum, one) => sum + one, 0) / values.length : null;
  const shown = value === null ? null : `${value.toFixed(2)} ${unit}`;
  return { name, group: 'conditions', shown, value, tolerance };
}
