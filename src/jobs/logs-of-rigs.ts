import type { ImpactProtocol, Rig } from '../documents/kinds.ts';
import { type Drop, type DropLog, NO_DETAILS } from '../logs/drop.ts';
import { dayOf } from '../logs/span.ts';
import { quote } from '../problem/echo.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { counted } from '../quantity/format.ts';
import { configurationOn, isDated, rigName, statesOf } from '../rig/configuration.ts';
import type { ImpactTest } from './impact-test.ts';

/** The logs of a test, and on which rig in which configuration each drop was made. */
export interface LogsOfRigs {
  /** With `id@config` on each drop, where drops of several rigs or configurations are in the test. */
  readonly logs: readonly DropLog[];
  /** The rig as it stood when a drop was made: that of the run for a drop which no rig's file tells of. */
  readonly rigOf: (drop: Drop) => Rig | null;
  readonly areSeveral: boolean;
}

/**
 * Finds the rig of each drop: the configuration that its own row names, else the one of its day.
 *
 * @throws InputError for a drop of which the rig's file does not say how the rig stood
 */
export function logsOfRigs(test: Pick<ImpactTest, 'logs' | 'rigs' | 'rig' | 'protocol'>): LogsOfRigs {
  const rigs = test.logs.map((_, i) => test.rigs[i] ?? null);
  const states = new Map<string, Rig>();
  for (const rig of new Set([test.rig, ...rigs])) {
    for (const state of rig === null ? [] : statesOf(rig)) states.set(rigName(state)!, state);
  }
  const strays = new Strays();
  const found = test.logs.map((log, i) => {
    const rig = rigs[i]!;
    return log.drops.map((drop) => stateOf(drop, rig, states, strays));
  });
  strays.throwIfAny();
  const ofDrops = found.flat();
  const inUse = new Set(ofDrops.map(rigName));
  if (!rigs.includes(test.rig)) inUse.add(rigName(test.rig));
  if (inUse.size < 2) {
    const [only = test.rig] = ofDrops;
    return {
      logs: withoutWrongMasses(test.logs, () => only, test.protocol),
      rigOf: () => only,
      areSeveral: false,
    };
  }
  const logs = test.logs.map((log, i) => ({
    ...log,
    drops: log.drops.map((drop, k) => {
      const rig = drop.details?.rig ?? rigName(found[i]![k]);
      return { ...drop, details: { ...(drop.details ?? NO_DETAILS), rig } };
    }),
  }));
  const byFile = new Map(test.logs.map(({ path }, i) => [path, rigs[i]!]));
  const rigOf = (drop: Drop) => states.get(drop.details?.rig ?? '') ?? byFile.get(drop.file) ?? test.rig;
  return { logs: withoutWrongMasses(logs, rigOf, test.protocol), rigOf, areSeveral: true };
}

/** A rig's computer goes on writing the mass that it was told: where that was proven wrong, the cell says nothing. */
function withoutWrongMasses(
  logs: readonly DropLog[],
  rigOf: LogsOfRigs['rigOf'],
  { vary }: ImpactProtocol,
): readonly DropLog[] {
  if (vary === 'mass') return logs;
  return logs.map((log) => {
    const isWrong = (drop: Drop) => {
      const rig = rigOf(drop);
      return rig?.provenMass != null && drop.mass === rig.mass?.value;
    };
    if (!log.drops.some(isWrong)) return log;
    return { ...log, drops: log.drops.map((drop) => (isWrong(drop) ? { ...drop, mass: null } : drop)) };
  });
}

function stateOf(drop: Drop, rig: Rig | null, states: ReadonlyMap<string, Rig>, strays: Strays): Rig | null {
  const named = drop.details?.rig ?? null;
  const known = named === null ? undefined : states.get(named);
  if (known !== undefined) return known;
  if (rig === null || !isDated(rig)) return rig;
  const configurations = rig.configurations!;
  const day = drop.time === null ? null : dayOf(drop.time);
  if (day === null || !/^\d{4}-\d\d-\d\d$/.test(day)) {
    strays.add('which-configuration', drop, rig, 'found no day');
    return rig;
  }
  const at = configurationOn(configurations, day);
  if (at === null) strays.add('no-configuration', drop, rig, `found ${day}`);
  return at === null ? rig : statesOf(rig)[at]!;
}

/** Drops that no configuration of their rig holds for: one problem for each kind and file. */
class Strays {
  readonly #met = new Map<string, { problem: Problem; count: number }>();

  add(code: string, { file, line }: Drop, rig: Rig, found: string): void {
    const key = `${code}\n${file}`;
    const same = this.#met.get(key);
    if (same !== undefined) {
      same.count += 1;
      return;
    }
    const configurations = rig.configurations!.map(
      ({ config, from, to }) =>
        `${config === null ? rig.id : quote(config, 24)} (${from ?? '…'} to ${to ?? '…'})`,
    );
    const message = `${found} for this drop, expected a day of ${configurations.join(', ')}: the rig's file says how it stood then (configurations), or the log's column "rig" names it`;
    this.#met.set(key, { problem: { file, line, column: null, code, message }, count: 1 });
  }

  throwIfAny(): void {
    const problems = [...this.#met.values()].map(({ problem, count }) => {
      const more = count > 1 ? ` (${counted(count, 'drop')} of the log)` : '';
      return { ...problem, message: `${problem.message}${more}` };
    });
    if (problems.length > 0) throw new InputError(problems);
  }
}
