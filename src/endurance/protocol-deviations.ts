import type { ListedDeviation } from '../conformance/deviation.ts';
import { DeviationList } from '../conformance/deviation-list.ts';
import type { Drum, EnduranceProtocol } from '../documents/kinds.ts';
import type { RigCheck } from '../logs/checks.ts';
import type { DrumEvent } from '../logs/events.ts';
import type { Inspection } from '../logs/inspections.ts';
import { type Register, registerCell } from '../logs/register.ts';
import { quote } from '../problem/echo.ts';
import { counted, significant } from '../quantity/format.ts';
import { circumferenceOf } from './by-drum.ts';
import type { TyreLife } from './life/lives.ts';
import { inspectionsDue } from './schedule-distances.ts';
import type { Sign } from './signs.ts';
import type { DrumSummary } from './summary.ts';

/** What documents and tables of a drum test say beside its log; empty where there is none. */
export interface DrumRecords {
  readonly protocol: EnduranceProtocol;
  readonly drum: Drum | null;
  /** Null without a log. */
  readonly summary: DrumSummary | null;
  readonly lives: readonly TyreLife[];
  readonly inspections: readonly Inspection[];
  readonly events: readonly DrumEvent[];
  readonly checks: readonly RigCheck[];
  readonly register: Register | null;
  /** Positions of the drum at which tyres ran; 0 where it has one. */
  readonly positions: number;
  /** Signs of failure in the log, and the km run up to each. */
  readonly signs: readonly (Pick<Sign, 'kind' | 'time'> & { readonly km: number })[];
}

// All limits here: common practice, no source.
const DIAMETER_AGREEMENT = 0.005;
/** Share of a planned distance by which a look may be late, and a block short. */
const LATE = 0.1;
const SHORT = 0.05;
/** km within which tyres were taken off together. */
const TOGETHER = 1;
const HOUR = 3_600_000;
/** Hours before a noted failure in which a sign belongs to it, and from which it was noted late. */
const BELONGS = 48;
const NOTED_LATE = 1;
/** km behind a sign from which a tyre ran on. */
const RAN_ON = 1;
const VIRGIN: ReadonlySet<string> = new Set(['', 'virgin', 'new', 'none']);

/** Departures that show only where the log, the documents and the tables of a test are laid side by side. */
export function protocolDeviations(records: DrumRecords): readonly ListedDeviation[] {
  const list = new DeviationList();
  drumSize(records, list);
  hotTyre(records, list);
  looks(records, list);
  failures(records, list);
  takenOffTogether(records, list);
  pastOfTyres(records, list);
  shortBlocks(records, list);
  gauges(records, list);
  if (records.positions > 1) {
    list.add({ code: 'DRUM-43', found: () => `tyres ran at ${records.positions} positions of the drum` });
  }
  return list.listed();
}

function drumSize({ drum, summary }: DrumRecords, list: DeviationList): void {
  const turned = summary?.kilometresPerRevolution ?? null;
  if (drum === null || turned === null) return;
  const stated = circumferenceOf(drum) / 1000;
  const share = Math.abs(turned / stated - 1);
  if (share <= DIAMETER_AGREEMENT) return;
  const found = () =>
    `counter and revolutions make ${significant((turned * 1000) / Math.PI, 4)} m of diameter, the rig states ${significant(drum.diameter, 4)} m, ${significant(100 * share, 2)} % apart`;
  list.add({ code: 'DRUM-06', found });
}

function hotTyre({ protocol, summary }: DrumRecords, list: DeviationList): void {
  const limit = protocol.stop?.tyreAbove ?? null;
  const most = Math.max(
    ...(summary?.schedule ?? []).flatMap(({ channels }) =>
      channels.filter(({ channel }) => channel === 'tyre temperature').flatMap(({ max }) => max ?? []),
    ),
  );
  if (limit === null || !(most > limit)) return;
  list.add({
    code: 'DRUM-16',
    found: () => `the tyre reached ${significant(most, 4)} °C, limit ${limit} °C`,
  });
}

/** Of each tyre the planned looks up to its last one; those of a point are one look. */
function looks({ protocol, inspections }: DrumRecords, list: DeviationList): void {
  const due = inspectionsDue(protocol);
  for (const specimen of new Set(inspections.map((look) => look.specimen))) {
    const own = inspections.filter((look) => look.specimen === specimen);
    const last = Math.max(...own.map(({ distance }) => distance));
    for (const km of due.filter((planned) => planned * (1 + LATE) < last)) {
      if (own.some(({ distance }) => Math.abs(distance - km) <= LATE * km)) continue;
      const { file, line } = own.find(({ distance }) => distance > km)!;
      list.add({
        code: 'DRUM-22',
        found: () => `no look near ${km} km, where one was planned`,
        file,
        line,
        specimen,
      });
    }
  }
}

function failures({ events, signs, lives, inspections }: DrumRecords, list: DeviationList): void {
  for (const { specimen, failed, upper, file, line } of lives.filter((life) => life.failed)) {
    const event = events.find(
      (each) => each.specimen === specimen && /^(?:failed|failure|burst)$/iu.test(each.event),
    );
    const near = signs.filter(
      ({ time }) => !event || (time <= event.time && event.time - time <= BELONGS * HOUR),
    );
    const [first] = near;
    if (failed && event && first && event.time - first.time > NOTED_LATE * HOUR) {
      const hours = significant((event.time - first.time) / HOUR, 2);
      const found = () => `${first.kind} ${hours} h before the failure was noted`;
      list.add({ code: 'DRUM-29', found, file: event.file, line: event.line, specimen });
    }
    if (first && upper - first.km > RAN_ON) {
      const found = () =>
        `${first.kind} at ${significant(first.km, 5)} km, and the tyre ran to ${significant(upper, 5)} km`;
      list.add({ code: 'DRUM-30', found, file, line, specimen });
    }
    const looked = inspections.filter(
      (look) => look.specimen === specimen && /^fail/iu.test(look.kind ?? ''),
    );
    const hasPhotos = inspections.some(({ photo }) => photo !== null);
    for (const look of hasPhotos ? looked.filter(({ photo }) => photo === null) : []) {
      const found = () => `the look at ${look.distance} km that found it failed has no photo`;
      list.add({ code: 'DRUM-47', found, file: look.file, line: look.line, specimen });
    }
  }
}

function takenOffTogether({ lives }: DrumRecords, list: DeviationList): void {
  const failed = lives.filter((life) => life.failed);
  if (lives.length < 3 || failed.length !== 1) return;
  const { upper } = failed[0]!;
  if (!lives.every((life) => life.failed || Math.abs(life.seenWhole - upper) <= TOGETHER)) return;
  const found = () =>
    `one tyre failed at ${significant(upper, 5)} km, and ${counted(lives.length - 1, 'other')} came off there`;
  list.add({ code: 'DRUM-32', found });
}

function pastOfTyres({ register, lives }: DrumRecords, list: DeviationList): void {
  for (const row of register?.specimens ?? []) {
    const history = registerCell(row, 'history') ?? '';
    if (VIRGIN.has(history.toLowerCase()) || !lives.some(({ specimen }) => specimen === row.specimen))
      continue;
    const { file, line, specimen } = row;
    list.add({ code: 'DRUM-34', found: () => `used before (${quote(history)})`, file, line, specimen });
  }
}

function shortBlocks({ summary }: DrumRecords, list: DeviationList): void {
  for (const [b, { block, plannedDistance, distance }] of (summary?.schedule ?? []).entries()) {
    const isFollowed = summary!.schedule.slice(b + 1).some((later) => later.distance.logged > 0);
    if (!isFollowed || plannedDistance === null || distance.logged >= (1 - SHORT) * plannedDistance) continue;
    const found = () =>
      `block ${quote(block)} ended after ${significant(distance.logged, 4)} km of ${significant(plannedDistance, 4)} km`;
    list.add({ code: 'DRUM-39', found });
  }
}

function gauges({ checks, summary }: DrumRecords, list: DeviationList): void {
  for (const { kind, gauge, due, passed, settled, value, file, line } of checks) {
    if (kind === 'gauge' && due !== null && summary !== null && due < summary.lastTime) {
      const day = new Date(due).toISOString().slice(0, 10);
      list.add({ code: 'DRUM-41', found: () => `gauge ${quote(gauge ?? '')} was due on ${day}`, file, line });
    }
    if (kind === 'reference' && !passed && settled === null) {
      const said = value === null ? '' : ` at ${value}`;
      list.add({
        code: 'DRUM-42',
        found: () => `the reference${said} is outside its limits, and not settled`,
        file,
        line,
      });
    }
  }
}
