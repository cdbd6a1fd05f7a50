import type { Replay } from '../impact/replay/replay.ts';
import { quote } from '../problem/echo.ts';
import { counted } from '../quantity/format.ts';
import type { Recovery } from '../result/next.ts';
import type { ImpactTest } from './impact-test.ts';
import { CUT_SHORT } from './replay-test.ts';

/** Gaps of the running numbers that are named one by one. */
const NAMED = 5;

/**
 * What a crash of the rig's computer has left of a test: a last row cut short, NUL bytes, running numbers that are
 * missing. Each lost row is a hit whose outcome nobody knows; a specimen that is hit several times is then known only as
 * far as its last row (censored), and is not to be hit again.
 *
 * @param replayed null where no drop was read
 */
export function recoveryOf({ logs, protocol }: ImpactTest, replayed: Replay | null): Recovery | null {
  const cut = logs.flatMap(({ path, findings }) =>
    findings
      .filter(({ code }) => CUT_SHORT.has(code))
      .map(({ message, line }) => `${path}${line === null ? '' : `:${line}`}: ${message}`),
  );
  const gaps = gapsOf(logs);
  if (cut.length === 0 && gaps.length === 0) return null;
  const isRising = protocol.method === 'rising-height';
  const censored = isRising && replayed !== null ? unfinishedRises(replayed, cut.length > 0, gaps) : [];
  const usable = replayed?.counts.validDrops ?? 0;
  return {
    lost: [...cut, ...gaps.slice(0, NAMED).map(({ sentence }) => sentence), ...more(gaps.length)],
    usable,
    censored,
    advice: adviceFor(isRising, censored),
  };
}

interface Gap {
  readonly sentence: string;
  /** Line of the row after the gap. */
  readonly line: number;
}

function gapsOf(logs: ImpactTest['logs']): Gap[] {
  return logs.flatMap((log) =>
    log.import.gaps.map(({ line, missing }) => ({
      line,
      sentence: `${log.path}:${line}: ${counted(missing, 'running number')} missing before this row: hits that were not saved`,
    })),
  );
}

function more(gaps: number): string[] {
  return gaps > NAMED ? [`and ${gaps - NAMED} more gaps in the running numbers`] : [];
}

/** Specimens of a rise that stood open where rows were lost. */
function unfinishedRises({ drops }: Replay, isCut: boolean, gaps: readonly Gap[]): string[] {
  const names = new Set<string>();
  const open = (index: number) => {
    const last = drops[index]?.drop;
    if (last !== undefined && last.outcome !== 'failed') names.add(last.specimen);
  };
  if (isCut) open(drops.length - 1);
  for (const { line } of gaps) {
    const after = drops.findIndex(({ drop }) => drop.line === line);
    if (after > 0) open(after - 1);
  }
  return [...names];
}

function adviceFor(isRising: boolean, censored: readonly string[]): string {
  const counter = "look at the rig's hit counter";
  if (!isRising) {
    return `The complete rows stand. A tyre that was hit and not saved is used up: ${counter}, take a new tyre and repeat the drop at the height given here.`;
  }
  if (censored.length === 0) {
    return `The complete rows stand. A tyre that was hit and not saved is used up: ${counter}, and begin with a new one.`;
  }
  const which = censored.map((name) => quote(name)).join(', ');
  return `The complete rows stand. If the counter shows a hit that is not in the log, ${which} ${censored.length === 1 ? 'is' : 'are'} censored: known only to be stronger than the last height survived. Do not hit ${censored.length === 1 ? 'it' : 'them'} again, and begin with a new tyre at the start height; if it shows none, go on as advised.`;
}
