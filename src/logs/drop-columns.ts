import type { Range } from './cells.ts';
import type { ColumnKind } from './columns.ts';
import type { Drop, DropDetails } from './drop.ts';

export type DropKey = Exclude<keyof Drop, 'file' | 'line' | 'details'> | keyof DropDetails;

/** The columns of a drop log in plain form. */
export const DROP_COLUMNS: readonly ColumnKind<DropKey>[] = [
  { key: 'number', name: 'drop', unit: null },
  { key: 'time', name: 'time', unit: null },
  { key: 'series', name: 'series', unit: null },
  { key: 'specimen', name: 'specimen', unit: null, isNeeded: true },
  { key: 'site', name: 'site', unit: 'deg' },
  { key: 'plannedHeight', name: 'planned height', unit: 'mm' },
  { key: 'height', name: 'height', unit: 'mm', isNeeded: true },
  { key: 'mass', name: 'mass', unit: 'kg' },
  { key: 'pressure', name: 'pressure', unit: 'bar' },
  { key: 'temperature', name: 'temperature', unit: '°C' },
  { key: 'velocity', name: 'velocity', unit: 'm/s' },
  { key: 'outcome', name: 'outcome', unit: null, isNeeded: true },
  { key: 'damage', name: 'damage', unit: null },
  { key: 'valid', name: 'valid', unit: null },
  { key: 'reason', name: 'reason', unit: null },
  { key: 'operator', name: 'operator', unit: null },
  { key: 'remark', name: 'remark', unit: null },
  { key: 'hits', name: 'hits', unit: null },
  { key: 'catcher', name: 'catcher', unit: null },
  { key: 'rig', name: 'rig', unit: null },
  { key: 'setTemperature', name: 'set temperature', unit: '°C' },
  { key: 'pressureAfter', name: 'pressure after', unit: 'bar' },
  { key: 'gauge', name: 'gauge', unit: null },
  { key: 'secondReading', name: 'second reading', unit: null },
  { key: 'reader', name: 'reader', unit: null },
  { key: 'leakCheck', name: 'leak check', unit: null },
  { key: 'criterion', name: 'failure criterion', unit: null },
  { key: 'protocol', name: 'protocol', unit: null },
];

/** The columns of which a row's details are made. */
export const DETAIL_KEYS = [
  'hits',
  'catcher',
  'rig',
  'setTemperature',
  'pressureAfter',
  'gauge',
  'secondReading',
  'reader',
  'leakCheck',
  'criterion',
  'protocol',
] as const satisfies readonly (keyof DropDetails)[];

// Common practice, no source: far beyond any rig, near enough to catch a slip of the unit and words such as -9999.
export const DROP_RANGES = {
  height: { unit: 'mm', least: 0, most: 100_000, isOpen: true },
  mass: { unit: 'kg', least: 0, most: 10_000, isOpen: true },
  pressure: { unit: 'bar', least: 0, most: 100 },
  temperature: { unit: '°C', least: -273.15, most: 1000 },
  velocity: { unit: 'm/s', least: 0, most: 100 },
  /** Ten turns either way: a rig may count on. */
  site: { unit: 'deg', least: -3600, most: 3600 },
} as const satisfies Readonly<Record<string, Range>>;

/** The words of the plain form. */
export const OUTCOMES: ReadonlyMap<string, NonNullable<Drop['outcome']>> = new Map(
  (['failed', 'survived', 'not-evaluable'] as const).map((word) => [word, word]),
);
/** What a rebound catcher did, in the words of the plain form. */
export const CATCHER: ReadonlyMap<string, NonNullable<DropDetails['catcher']>> = new Map(
  (['in-time', 'early', 'missed'] as const).map((word) => [word, word]),
);
export const VALID: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['no', false],
  ['true', true],
  ['false', false],
]);
