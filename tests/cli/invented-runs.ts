import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

// Runs written to a folder, for tests of commands that read several of them.

/** What a run is made of; everything else has a default. */
export interface InventedRun {
  readonly id: string;
  readonly factors?: Readonly<Record<string, string>>;
  readonly declared?: readonly string[];
  /** YAML lines of the protocol behind its head. */
  readonly protocol: readonly string[];
  readonly kind?: 'impact' | 'endurance';
  readonly log: string;
  readonly specimens?: string;
  /** More constructions of the run, by id. */
  readonly also?: readonly string[];
}

/** Writes a run with its protocol, construction and log, and gives its path. */
export function inventedRun(folder: string, run: InventedRun): string {
  const own = join(folder, run.id);
  mkdirSync(own, { recursive: true });
  const kind = run.kind ?? 'impact';
  const protocol = [
    'format: tirelab.protocol/1',
    'id: invented',
    'version: 1.0.0',
    `kind: ${kind}`,
    ...run.protocol,
  ];
  writeFileSync(join(own, 'protocol.yaml'), `${protocol.join('\n')}\n`);
  const constructions = [run.id, ...(run.also ?? [])];
  for (const id of constructions) {
    const factors = Object.entries(run.factors ?? { cloth: id }).map(
      ([name, value]) => `${name}: "${value}"`,
    );
    const text = [
      'format: tirelab.construction/1',
      `id: "${id}"`,
      'revision: "1"',
      'size: "62-622"',
      `declared: [${(run.declared ?? ['cloth']).join(', ')}]`,
      `factors: { ${id === run.id || run.factors ? factors.join(', ') : `cloth: "${id}"`} }`,
    ];
    writeFileSync(join(own, `${id}.yaml`), `${text.join('\n')}\n`);
  }
  writeFileSync(join(own, 'log.csv'), run.log);
  if (run.specimens !== undefined) writeFileSync(join(own, 'specimens.csv'), run.specimens);
  const text = [
    'format: tirelab.run/1',
    `id: "run-${run.id}"`,
    'protocol: protocol.yaml',
    `constructions: [${constructions.map((id) => `"${id}.yaml"`).join(', ')}]`,
    ...(run.specimens === undefined ? [] : ['specimens: specimens.csv']),
    'logs: [log.csv]',
  ];
  writeFileSync(join(own, 'run.yaml'), `${text.join('\n')}\n`);
  return join(own, 'run.yaml');
}

/** One drop of an invented log. */
export interface InventedDrop {
  readonly specimen: string;
  /** mm. */
  readonly height: number;
  readonly failed: boolean;
  readonly time?: string;
  readonly operator?: string;
  readonly pressure?: number;
}

export function dropLog(drops: readonly InventedDrop[]): string {
  const rows = drops.map(({ specimen, height, failed, time = '', operator = '', pressure = 2 }) =>
    [specimen, time, height, pressure, failed ? 'failed' : 'survived', operator].join(','),
  );
  return `specimen,time,height [mm],pressure [bar],outcome,operator\n${rows.join('\n')}\n`;
}

/** Drops of a fixed-level test from failures of so many at each level, each on a tyre of its own. */
export function levelDrops(
  name: string,
  levels: readonly (readonly [height: number, failures: number, drops: number])[],
): InventedDrop[] {
  return levels.flatMap(([height, failures, drops]) =>
    Array.from({ length: drops }, (_, i) => ({
      specimen: `${name}-${height}-${i}`,
      height,
      failed: i < failures,
    })),
  );
}
