import type { DeviationList, Raised } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import type { Visit } from './replayed.ts';
import type { Session } from './session.ts';

/**
 * What may not change while a test goes on: the configuration of a rig within a series (DROP-19), the gauge (DROP-24),
 * the failure criterion (DROP-46), the protocol that the rig's computer showed (DROP-55). Each change is told where it
 * is met first.
 */
export function checkConfiguration(session: Session, list: DeviationList): void {
  const { visits, columns, protocol } = session;
  for (const { file, line, criterion, version } of session.pinned ?? []) {
    const found = () =>
      `criterion ${quote(criterion, 24)} rests on version ${quote(version, 24)} of the protocol, the run followed ${quote(protocol.version, 24)}`;
    list.add({ code: 'DROP-55', found, file, line, severity: 'note', effect: 'the criterion is invalid' });
  }
  if (columns.has('rig')) checkRigs(session, list);
  if (columns.has('gauge')) {
    changes(
      visits,
      ({ drop }) => drop.details?.gauge ?? null,
      (visit, first, now) => {
        add(
          list,
          visit,
          'DROP-24',
          `pressure read by gauge ${quote(now, 24)}, at first by ${quote(first, 24)}`,
        );
      },
    );
  }
  if (columns.has('criterion')) {
    changes(
      visits,
      ({ drop }) => drop.details?.criterion ?? null,
      (visit, first, now) => {
        add(list, visit, 'DROP-46', `outcome read as ${quote(now)}, at first as ${quote(first)}`);
      },
    );
  }
  if (columns.has('leakCheck')) {
    const planned = protocol.leakCheck?.method ?? null;
    changes(
      visits,
      ({ drop }) => drop.details?.leakCheck ?? null,
      (visit, first, now) => {
        const before = planned === null ? `at first by ${quote(first)}` : `planned by ${quote(first)}`;
        add(list, visit, 'DROP-46', `tightness looked at by ${quote(now)}, ${before}`, LEAK_CHECK);
      },
      planned,
    );
  }
  if (columns.has('protocol')) {
    const own = `${protocol.id}@${protocol.version}`;
    changes(
      visits,
      ({ drop }) => drop.details?.protocol ?? null,
      (visit, _, now) => {
        if (now !== own)
          add(list, visit, 'DROP-55', `made by protocol ${quote(now)}, analysed by ${quote(own)}`);
      },
      own,
    );
  }
}

/** The criterion is the same in words; what is found by it may not be. */
const LEAK_CHECK = {
  severity: 'minor',
  scope: 'run',
  effect: 'a slow leak that one way finds, the other may not',
} as const;

function checkRigs({ visits, groups }: Session, list: DeviationList): void {
  const first = new Map<string, string>();
  const told = new Set<string>();
  for (const visit of visits) {
    const rig = visit.drop.details?.rig ?? null;
    if (rig === null || visit.use === 'set-aside') continue;
    const series = `${groups[visit.sample]?.strand}\n${visit.drop.series}`;
    const before = first.get(series);
    if (before === undefined) first.set(series, rig);
    else if (before !== rig && !told.has(`${series}\n${rig}`)) {
      told.add(`${series}\n${rig}`);
      const message = `made on ${quote(rig)}, the series began on ${quote(before)}`;
      add(list, visit, 'DROP-19', message);
    }
  }
}

/** Calls back at the first visit with each value that is not the first one, or not the one that was expected. */
function changes(
  visits: readonly Visit[],
  of: (visit: Visit) => string | null,
  tell: (visit: Visit, first: string, now: string) => void,
  expected: string | null = null,
): void {
  let first = expected;
  const seen = new Set<string>();
  for (const visit of visits) {
    const value = of(visit);
    if (value === null) continue;
    first ??= value;
    if (value === first || seen.has(value)) continue;
    seen.add(value);
    tell(visit, first, value);
  }
}

function add(
  list: DeviationList,
  visit: Visit,
  code: string,
  found: string,
  more: Pick<Raised, 'severity' | 'scope' | 'effect'> = {},
): void {
  const { drop } = visit;
  const place = {
    file: drop.file,
    line: drop.line,
    specimen: drop.specimen,
    drop: drop.number ?? visit.place,
  };
  list.add({ code, found: () => found, ...place, ...more });
}
