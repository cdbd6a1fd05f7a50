import type { ListedDeviation } from '../conformance/deviation.ts';
import { counted } from '../quantity/format.ts';
import { DeviationListing, type Found, type Repeated } from './deviation-listing.ts';
import type { DrumPass } from './drum-pass.ts';
import { duration } from './duration.ts';
import type { EventKind, EventSums, LogEvent } from './event-tally.ts';
import { heldQuantity } from './plan.ts';
import { sensorDeviations } from './sensor-deviations.ts';
import type { Stretch, Stretches } from './stretches.ts';
import { type DrumSummary, kilometres } from './summary.ts';

/** Share of the logged distance in gaps beyond which the whole test rests on what nobody saw. */
const MOST_UNVERIFIED = 0.05;
/** Share by which counter and integral may differ before the distance itself is in doubt. */
const DOUBTFUL_DISTANCE = 0.02;
/** km; smaller differences are the counter's own resolution. */
const COUNTER_GRAIN = 0.2;

/** Departures that the log itself shows, by code; each says what was found, how long, how far and where. */
export function drumDeviations(pass: DrumPass, summary: DrumSummary): readonly ListedDeviation[] {
  const listing = new DeviationListing(pass.logs.map(({ path }) => path));
  heldChannels(pass, summary, listing);
  standing(pass, listing);
  distances(pass, summary, listing);
  gaps(pass, summary, listing);
  sensorDeviations(pass, listing);
  return listing.all();
}

function heldChannels(
  { ledger, plan, schedule }: DrumPass,
  { distance }: DrumSummary,
  listing: DeviationListing,
): void {
  const codes: Readonly<Record<string, readonly [below: string, above: string]>> = {
    speed: ['DRUM-01', 'DRUM-01'],
    load: ['DRUM-02', 'DRUM-02'],
    pressure: ['DRUM-10', 'DRUM-12'],
    'ambient temperature': ['DRUM-13', 'DRUM-13'],
  };
  const limits = (name: string): string =>
    [...new Set(schedule.flatMap((block) => heldQuantity(block, name)?.text ?? []))].join(', then ');
  for (const [c, { name }] of plan.channels.entries()) {
    const code = codes[name];
    if (!code) continue;
    const sides = [
      [ledger.watch.below[c]!, 'below', code[0]],
      [ledger.watch.above[c]!, 'above', code[1]],
    ] as const;
    for (const [stretches, side, sideCode] of sides) {
      const say = (stretch: Stretch): Found =>
        at(stretch, `${name} ${side} its limits (${limits(name)}) ${extent(stretch, { plan })}`);
      listing.repeated(sideCode, stretches, say, sumOf(stretches, distance.logged, { plan }));
    }
  }
  const { lifted } = ledger.watch;
  const say = (stretch: Stretch): Found =>
    at(stretch, `load arm lifted while turning ${extent(stretch, { plan })}`);
  listing.repeated('DRUM-03', lifted, say, sumOf(lifted, distance.logged, { plan }));
}

function standing({ ledger, plan, rules }: DrumPass, listing: DeviationListing): void {
  const counting = ledger.events.byKind.get('standing');
  if (counting) {
    const found = `${km(counting.gained, { plan })} counted while the drum stood, in ${counted(counting.count, 'row')}`;
    const first = counting.listed[0]!;
    const rows = {
      file: first.file,
      count: counting.count,
      firstLine: first.line,
      lastLine: counting.last.line,
    };
    listing.once('DRUM-04', found, rows);
  }
  const { slowing } = ledger.watch;
  const [first] = slowing.listed;
  if (first) {
    const found = `${km(slowing.distance, { plan })} up to rows at standstill, to which the drum ran down, in ${counted(slowing.count, 'stop')}`;
    const rows = {
      file: first.file,
      count: slowing.count,
      firstLine: first.firstLine,
      lastLine: slowing.lastLine,
    };
    listing.once('DRUM-04', found, rows, { severity: 'note' });
  }
  const pauses = longPauses(ledger.events.byKind.get('pause'), rules.interruption * 1000);
  const stops = ledger.watch.standing;
  const severity = stops.count + pauses.length > rules.interruptionsAllowed ? 'minor' : 'note';
  const say = (stretch: Stretch): Found => at(stretch, `the drum stood for ${duration(stretch.time)}`);
  listing.repeated('DRUM-17', stops, say, duration(stops.time), { severity });
  for (const pause of pauses) {
    const found = `nothing was logged for ${duration(pause.to - pause.from)}, and the counter stood`;
    listing.once('DRUM-17', found, { file: pause.file, firstLine: pause.line }, { severity });
  }
  const loaded = ledger.watch.standingLoaded;
  const sayLoaded = (stretch: Stretch): Found =>
    at(stretch, `the wheel stood under load for ${duration(stretch.time)}`);
  listing.repeated('DRUM-18', loaded, sayLoaded, duration(loaded.time));
}

function distances({ ledger, plan, rules }: DrumPass, summary: DrumSummary, listing: DeviationListing): void {
  if (plan.counter < 0) return;
  const unintegrated = ledger.blocks.reduce((sum, block) => sum + block.gaps + block.standing, 0);
  const byCounter = summary.distance.logged - kilometres(unintegrated, plan);
  const difference = Math.abs(byCounter - summary.integral);
  const share = difference / Math.max(byCounter, summary.integral);
  if (difference > COUNTER_GRAIN && share > rules.counterAgreement) {
    const found =
      `the counter gained ${byCounter.toFixed(3)} km where the integral of speed is ` +
      `${summary.integral.toFixed(3)} km, ${percent(share)} apart`;
    listing.once('DRUM-05', found, {}, share > DOUBTFUL_DISTANCE ? { severity: 'invalidating' } : {});
  }
  const sayings = {
    jump: 'the counter jumped',
    reset: 'the counter fell',
    rollover: 'the counter ran over',
  } as const;
  for (const [kind, saying] of Object.entries(sayings)) {
    const severity = kind === 'rollover' ? 'note' : 'minor';
    events({ ledger, plan }, listing, 'DRUM-05', kind as EventKind, saying, { severity, scope: 'interval' });
  }
}

function gaps({ ledger, plan }: DrumPass, { distance }: DrumSummary, listing: DeviationListing): void {
  const books = { ledger, plan };
  const isMuch = distance.unverified > MOST_UNVERIFIED * distance.logged;
  const weight = isMuch ? ({ severity: 'invalidating', scope: 'run' } as const) : {};
  events(books, listing, 'DRUM-19', 'gap', 'nothing was logged while the drum ran', weight);
  events(books, listing, 'DRUM-20', 'gap-reset', 'nothing was logged, and the counter began anew');
  events(books, listing, 'DRUM-21', 'clock', 'the clock stepped');
  events(books, listing, 'DRUM-45', 'overlap', 'time and counter stepped back together');
  const { different, firstDifferent } = ledger.rewritten;
  if (!firstDifferent) return;
  const found = `${counted(different, 'whole minute')} written twice with other values: look which of the two is right`;
  const { file, line } = firstDifferent;
  listing.once('DRUM-45', found, { file, count: different, firstLine: line }, { severity: 'invalidating' });
}

function events(
  { ledger, plan }: Pick<DrumPass, 'ledger' | 'plan'>,
  listing: DeviationListing,
  code: string,
  kind: EventKind,
  saying: string,
  weight: Parameters<DeviationListing['once']>[3] = {},
): void {
  const sums = ledger.events.byKind.get(kind);
  if (!sums) return;
  const say = (event: LogEvent): Found => ({
    file: event.file,
    line: event.line,
    found:
      `${saying}: ${duration(event.to - event.from)} from the row before` +
      (Number.isNaN(event.gained) ? '' : `, ${km(event.gained, { plan })} by the counter`),
  });
  listing.repeated(
    code,
    repeatedEvents(sums),
    say,
    `${duration(sums.time)}, ${km(sums.gained, { plan })}`,
    weight,
  );
}

function repeatedEvents(sums: EventSums): Repeated<LogEvent> {
  return { count: sums.count, listed: sums.listed, lastLine: sums.last.line };
}

function longPauses(sums: EventSums | undefined, least: number): readonly LogEvent[] {
  return (sums?.listed ?? []).filter(({ from, to }) => to - from >= least);
}

function at(stretch: Stretch, found: string): Found {
  return { file: stretch.file, line: stretch.firstLine, found };
}

function extent(
  { rows, time, distance, firstLine, lastLine }: Stretch,
  books: Pick<DrumPass, 'plan'>,
): string {
  return `in ${counted(rows, 'row')} (lines ${firstLine} to ${lastLine}), ${duration(time)}, ${km(distance, books)}`;
}

function sumOf(stretches: Stretches, logged: number, { plan }: Pick<DrumPass, 'plan'>): string {
  const distance = kilometres(stretches.distance, plan);
  return `${counted(stretches.rows, 'row')}, ${duration(stretches.time)}, ${distance.toFixed(3)} km, ${percent(distance / logged)} of the distance`;
}

function km(steps: number, { plan }: Pick<DrumPass, 'plan'>): string {
  return `${kilometres(steps, plan).toFixed(3)} km`;
}

function percent(share: number): string {
  return `${(share * 100).toFixed(2)} %`;
}
