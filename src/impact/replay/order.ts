import type { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import type { Visit } from './replayed.ts';
import type { Session } from './session.ts';

/** Fewest drops of a construction from which its place in the order says something. */
const FEWEST = 3;

/**
 * Where several constructions were tested together: whether each stands in one block of the order (DROP-47), and
 * whether each had an operator of its own (DROP-48). Either is then one with the construction, and nothing in the data
 * can part them.
 */
export function checkOrder({ visits, groups }: Session, list: DeviationList): void {
  const names = groups.map(({ key }) => key.construction);
  if (new Set(names).size < 2) return;
  const counts = new Map<string | null, number>();
  const operators = new Map<string | null, Set<string>>();
  const starts: Visit[] = [];
  let last: string | null | undefined;
  for (const visit of visits) {
    if (visit.use === 'set-aside' || visit.tyre.stranger !== null) continue;
    const name = names[visit.sample] ?? null;
    counts.set(name, (counts.get(name) ?? 0) + 1);
    if (visit.drop.operator !== null) {
      const own = operators.get(name) ?? new Set();
      operators.set(name, own.add(visit.drop.operator));
    }
    if (name !== last) starts.push(visit);
    last = name;
  }
  const isLarge = [...counts.values()].every((count) => count >= FEWEST);
  if (isLarge && starts.length === counts.size) {
    const [, second] = starts;
    tell(
      list,
      second!,
      'DROP-47',
      `each of ${counts.size} constructions was tested in one block, the second from here on`,
    );
  }
  const sets = [...operators.values()];
  const all = new Set(sets.flatMap((own) => [...own]));
  const areApart = sets.reduce((sum, own) => sum + own.size, 0) === all.size;
  if (isLarge && sets.length === counts.size && areApart) {
    const first = starts[0]!.drop.operator;
    const change = visits.find(({ drop }) => drop.operator !== null && drop.operator !== first);
    if (change === undefined) return;
    const who = quote(change.drop.operator!, 24);
    tell(list, change, 'DROP-48', `each construction had an operator of its own, this one ${who}`);
  }
}

function tell(list: DeviationList, { drop, place }: Visit, code: string, found: string): void {
  list.add({ code, found: () => found, file: drop.file, line: drop.line, drop: drop.number ?? place });
}
