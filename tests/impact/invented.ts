import type { Construction, ImpactProtocol, Rig, Source } from '../../src/documents/kinds.ts';
import type { Replay, ReplayInput } from '../../src/impact/replay/replay.ts';
import { replay } from '../../src/impact/replay/replay.ts';
import type { Drop } from '../../src/logs/drop.ts';
import type { Quantity, Tolerance } from '../../src/quantity/quantity.ts';
import { energyScale } from '../../src/rig/energy.ts';

// Invented protocols and logs of an invented lab: what the tests of this room vary.

export const SOURCE: Source = {
  path: 'protocol.yaml',
  sha256: '',
  bytes: 0,
  locate: () => ({ line: 1, column: 1 }),
};

export function quantity(value: number, unit: string, tolerance: Tolerance | null = null): Quantity {
  return { value, unit, tolerance, text: `${value} ${unit}` };
}

/** Up-and-down from 500 mm by 25 mm with 8 kg, as CONTRACT's example has it, less conditions and stop. */
export function upAndDownProtocol(changes: Partial<ImpactProtocol> = {}): ImpactProtocol {
  return {
    format: 'tirelab.protocol/1',
    kind: 'impact',
    id: 'invented',
    version: '1.0.0',
    title: null,
    method: 'up-and-down',
    failure: null,
    mass: quantity(8, 'kg'),
    gravity: null,
    energy: 'potential',
    vary: 'height',
    height: null,
    start: 500,
    step: { kind: 'additive', size: 25 },
    levels: null,
    perLevel: null,
    survivalsToRaise: null,
    guess: null,
    heightTolerance: 1,
    limits: { min: 100, max: 1200 },
    pressure: null,
    temperature: null,
    sites: { perSpecimen: null, spacing: null, each: 'new-spot', avoid: [] },
    afterFailure: 'retire',
    stop: null,
    damagePerHit: null,
    estimators: [],
    regression: null,
    distribution: 'normal',
    confidence: 0.95,
    defaults: [],
    source: SOURCE,
    ...changes,
  };
}

/** Rising from 350 mm by 25 mm. */
export function risingProtocol(changes: Partial<ImpactProtocol> = {}): ImpactProtocol {
  return upAndDownProtocol({ method: 'rising-height', start: 350, ...changes });
}

export function rigOf(changes: Partial<Rig> = {}): Rig {
  return {
    format: 'tirelab.rig/1',
    id: 'drop-2',
    config: null,
    title: null,
    mass: null,
    site: null,
    gravity: null,
    resolution: null,
    export: null,
    limits: { min: null, max: null },
    source: { ...SOURCE, path: 'rig.yaml' },
    ...changes,
  };
}

export function constructionOf(id: string, revision = '1', size: string | null = null): Construction {
  return {
    format: 'tirelab.construction/1',
    id,
    revision,
    title: null,
    status: null,
    category: null,
    size,
    parent: null,
    declared: [],
    factors: {},
    source: SOURCE,
  };
}

export function dropOf(changes: Partial<Drop> & { height: number }): Drop {
  return {
    file: 'drops.csv',
    line: 2,
    number: null,
    time: null,
    series: null,
    specimen: 'T01',
    site: null,
    plannedHeight: null,
    mass: null,
    pressure: null,
    temperature: null,
    velocity: null,
    outcome: 'survived',
    damage: null,
    valid: true,
    reason: null,
    operator: null,
    remark: null,
    ...changes,
  };
}

/**
 * A log from `height outcome` pairs such as `500x 475o 500-`: x failed, o survived, - not evaluable, ? empty. Each
 * drop has its own specimen (T01, T02, …) and stands on line 2, 3, ….
 */
export function logOf(text: string, each: (index: number) => Partial<Drop> = () => ({})): Drop[] {
  return text
    .trim()
    .split(/\s+/u)
    .map((word, index) =>
      dropOf({
        line: index + 2,
        specimen: `T${String(index + 1).padStart(2, '0')}`,
        height: Number(word.slice(0, -1)),
        outcome: OUTCOMES[word.at(-1)!]!,
        ...each(index),
      }),
    );
}

/** Rises of one specimen each: `350o 375o 400x / 350o 375x`. */
export function risesOf(text: string, each: (index: number) => Partial<Drop> = () => ({})): Drop[] {
  const drops: Drop[] = [];
  for (const [specimen, rise] of text.split('/').entries()) {
    for (const drop of logOf(rise)) {
      const index = drops.length;
      drops.push({ ...drop, line: index + 2, specimen: `T${specimen + 1}`, ...each(index) });
    }
  }
  return drops;
}

/** The drops with some of them changed, by line. */
export function changed(drops: readonly Drop[], changes: Readonly<Record<number, Partial<Drop>>>): Drop[] {
  return drops.map((drop) => ({ ...drop, ...changes[drop.line] }));
}

const OUTCOMES: Readonly<Record<string, Drop['outcome']>> = {
  x: 'failed',
  o: 'survived',
  '-': 'not-evaluable',
  '?': null,
};

export function replayed(
  protocol: ImpactProtocol,
  drops: readonly Drop[],
  more: Partial<ReplayInput> = {},
): Replay {
  const columns = more.columns ?? new Set<string>();
  return replay({
    protocol,
    rig: null,
    drops,
    columns,
    specimens: null,
    constructions: [],
    scale: energyScale(protocol, more.rig ?? null, drops, columns),
    ...more,
  });
}

/** `code@line severity` of each deviation: what most tests compare. */
export function found(result: Replay): string[] {
  return result.deviations.map(({ code, line, severity }) => `${code}@${line ?? 'run'} ${severity}`);
}
