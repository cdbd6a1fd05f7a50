import type { ListedDeviation } from '../conformance/deviation.ts';
import { DeviationList } from '../conformance/deviation-list.ts';
import type { DrumEvent } from '../logs/events.ts';
import { echo, quote } from '../problem/echo.ts';

/** Words of the table of events that are departures from a protocol; any other is a note. Common practice, no source. */
const CODES: ReadonlyMap<string, string> = new Map([
  ['cleat lost', 'DRUM-07'],
  ['cleat loose', 'DRUM-07'],
  ['cleats changed', 'DRUM-08'],
  ['top-up', 'DRUM-09'],
  ['sensor moved', 'DRUM-14'],
  ['fan', 'DRUM-15'],
  ['remounted', 'DRUM-26'],
  ['moved', 'DRUM-27'],
  ['taken off', 'DRUM-31'],
  ['schedule changed', 'DRUM-33'],
  ['misaligned', 'DRUM-35'],
  ['surface', 'DRUM-36'],
  ['debris', 'DRUM-37'],
  ['no warm-up', 'DRUM-38'],
  ['override', 'DRUM-48'],
]);

/** Departures that the lab itself wrote down. */
export function eventDeviations(events: readonly DrumEvent[]): readonly ListedDeviation[] {
  const list = new DeviationList();
  for (const { file, line, specimen, event, value } of events) {
    const code = CODES.get(event.toLowerCase());
    if (code === undefined) continue;
    const found = () => `noted as ${quote(event)}${value === null ? '' : ` (${echo(value, 60)})`}`;
    list.add({ code, found, file, line, ...(specimen === null ? {} : { specimen }) });
  }
  return list.listed();
}

/** Events that are no departure, counted by their word. */
export function otherEvents(events: readonly DrumEvent[]): string[] {
  const counts = new Map<string, number>();
  for (const { event } of events) {
    if (!CODES.has(event.toLowerCase())) counts.set(event, (counts.get(event) ?? 0) + 1);
  }
  if (counts.size === 0) return [];
  const said = [...counts]
    .slice(0, 8)
    .map(([event, count]) => `${quote(event)}${count > 1 ? ` ${count} times` : ''}`);
  return [`events that are no departure from the protocol: ${said.join(', ')}`];
}
