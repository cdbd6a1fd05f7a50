import { echo, quote } from '../../problem/echo.ts';
import type { ProblemList } from '../../problem/problem.ts';
import type { Column, ColumnKind } from '../columns.ts';
import type { Drop, DropDetails } from '../drop.ts';
import { CATCHER, DROP_COLUMNS, type DropKey, OUTCOMES, VALID } from '../drop-columns.ts';
import { DropSink } from '../drop-sink.ts';
import { instantOf } from '../instant.ts';
import type { Row } from '../row.ts';
import { rebuildTimes } from '../time/rebuilt-times.ts';
import { type ResolvedTimes, type RowTime, resolveTimes } from '../time/row-times.ts';
import { readWallTime, timeExpectation } from '../time/time-rule.ts';
import type { Zone } from '../time/zone.ts';
import { ExportCells } from './cells.ts';
import { findExportColumns } from './columns.ts';
import { type ImportReport, ImportTally } from './import-report.ts';
import { mixedPressures } from './mixed-units.ts';
import { readFormed } from './number-form.ts';
import { Overlap } from './overlap.ts';
import type { ExportProfile } from './profile.ts';
import type { ExportRows } from './rows.ts';

/** The columns of a drop log, a date that stands apart from its time, and the seconds that a rig counts. */
export const EXPORT_COLUMNS: readonly ColumnKind<DropKey | 'date' | 'uptime'>[] = [
  ...DROP_COLUMNS,
  { key: 'date', name: 'date', unit: null },
  { key: 'uptime', name: 'uptime', unit: 's' },
];

/** What a rig's export of drops becomes: the same records as from the plain form, and an account of the import. */
export class ExportSink extends DropSink {
  readonly #profile: ExportProfile;
  readonly #rows: ExportRows;
  readonly #tally: ImportTally;
  readonly #form: ExportCells['form'];
  readonly #overlap: Overlap;
  readonly #times: (RowTime | null)[] = [];
  /** s, where times are rebuilt from them. */
  readonly #counters: (number | null)[] = [];
  readonly #words: {
    readonly outcomes: ReadonlyMap<string, NonNullable<Drop['outcome']>>;
    readonly valid: ReadonlyMap<string, boolean>;
  };
  #time: RowTime | null = null;
  #start: number | null = null;

  constructor(file: string, problems: ProblemList, profile: ExportProfile, rows: ExportRows) {
    const tally = new ImportTally();
    const cells = new ExportCells(file, problems, profile, tally);
    super(file, problems, cells);
    this.#profile = profile;
    this.#rows = rows;
    this.#tally = tally;
    this.#form = cells.form;
    this.#overlap = new Overlap(profile.counter, tellsSeconds(profile));
    this.#words = { outcomes: profile.outcomes ?? OUTCOMES, valid: profile.valid ?? VALID };
  }

  override header(row: Row): void {
    const { problems, file } = this;
    const found = findExportColumns(row, this.#rows.units, this.#profile, EXPORT_COLUMNS, file, problems);
    this.begin(row, found.known, found.unknown);
    this.findings.push(...found.findings);
    this.#start = this.#findStart();
    this.#overlap.begin();
  }

  override row(row: Row): void {
    const drop = this.drop(row);
    this.segments.at(-1)!.rows += 1;
    const again = this.#overlap.meet(drop, this.#time);
    if (again === 'same') return;
    if (again !== null) {
      const { line } = again;
      const message = `found another row for what stands on line ${line} (${again.what}), expected rows of two stretches to be the same or apart; give the stretches as two logs, or say that the number begins anew (export.counter)`;
      this.problems.add({ file: this.file, line: row.line, column: 1, code: 'overlapping-rows', message });
    }
    this.count(drop);
    if (!this.problems.isEmpty || this.cells.hasStrangeWords) return;
    this.drops.push(drop);
    this.#times.push(this.#time);
    if (!this.#profile.isRebuilt) return;
    this.#counters.push(this.cells.quantity(row, this.columns.get('uptime'), UPTIME));
  }

  override end(): void {
    super.end();
    this.#settleTimes();
    for (const { line, message } of mixedPressures(this.drops)) {
      this.problems.add({ file: this.file, line, column: null, code: 'mixed-units', message });
    }
  }

  protected override outcomes(): ReadonlyMap<string, NonNullable<Drop['outcome']>> {
    return this.#words.outcomes;
  }

  protected override outcome(row: Row, column: Column | undefined): Drop['outcome'] {
    return this.cells.word(row, column, this.#words.outcomes, OUTCOME_SETTLED);
  }

  protected override catcher(row: Row, column: Column | undefined): DropDetails['catcher'] {
    return this.cells.word(row, column, this.#profile.catcher ?? CATCHER, CATCHER_SETTLED);
  }

  /** With the lab's words as codes, the whole cell or its parts; what nobody mapped stays as written. */
  protected override damage(row: Row, column: Column | undefined): string | null {
    const text = super.damage(row, column);
    const codes = this.#profile.damages;
    if (text === null || codes === null) return text;
    const coded = (word: string) => codes.get(word.trim().normalize('NFC')) ?? null;
    return (
      coded(text) ??
      text
        .split(/[;+|]/u)
        .map((part) => coded(part) ?? part.trim())
        .join(';')
    );
  }

  protected override isValid(row: Row, column: Column | undefined): boolean {
    return this.cells.word(row, column, this.#words.valid, VALID_SETTLED) ?? true;
  }

  /** Read now, and given its offset when the rows behind it are known. */
  protected override time(row: Row, column: Column | undefined): string | null {
    const rule = this.#profile.time;
    this.#time = null;
    if (rule === null || column === undefined) return super.time(row, column);
    const date = this.columns.get('date');
    const day = this.cells.text(row, date);
    const clock = this.cells.text(row, column);
    if (clock === null && day === null) return null;
    const text = [day, clock].filter((part) => part !== null).join(' ');
    const number = (cell: string) => {
      const read = readFormed(cell, this.#form);
      return typeof read === 'number' ? read : null;
    };
    const wall = readWallTime(text, rule, number, this.#start);
    if (wall !== null) {
      this.#time = { ...wall, place: row.place(column.index) };
    } else if (rule.kind !== 'seconds' || this.#start !== null) {
      const message = `${column.title}: found ${quote(text)}, expected ${timeExpectation(rule)}; correct it, or the profile (export.time.format)`;
      this.cells.problem(row, column, 'not-a-time', message);
    }
    return null;
  }

  protected override report(): ImportReport {
    return {
      ...super.report(),
      rig: this.#profile.rig,
      rows: { ...super.report().rows, collapsed: this.#overlap.collapsed },
      emptied: Object.fromEntries(this.#tally.emptied),
      conversions: this.#tally.conversions,
      metadata: this.#rows.metadata,
    };
  }

  #findStart(): number | null {
    const rule = this.#profile.time;
    if (rule?.kind !== 'seconds') return null;
    if (typeof rule.start === 'number') return rule.start;
    const { key } = rule.start;
    const stated = this.#rows.valueOf(key);
    const instant = stated === null ? null : instantOf(stated.value);
    if (instant === null) {
      const found = stated === null ? `no line ${quote(key)}` : `${quote(stated.value)} at ${quote(key)}`;
      const message = `found ${found} before the header, expected the start as ISO 8601 with its offset; the profile may give it (export.time.start)`;
      this.problems.add({ file: this.file, line: stated?.line ?? 1, column: 1, code: 'no-start', message });
    }
    return instant;
  }

  #settleTimes(): void {
    const rule = this.#profile.time;
    if (rule === null) return;
    const zone = 'zone' in rule ? rule.zone : null;
    const times = this.#rebuilt(resolveTimes(this.#times, zone), zone);
    for (const [i, iso] of times.iso.entries()) {
      if (iso !== null) this.drops[i] = { ...this.drops[i]!, time: iso };
    }
    for (const { place } of times.impossible) {
      const message = `found a time that the clock of ${echo(zone!.name)} leaves out in spring, expected one that it shows; the profile gives the rig's zone, or a fixed offset (export.time.zone)`;
      this.problems.add({ file: this.file, ...place, code: 'no-such-time', message });
    }
    this.#findTimes(times);
  }

  /** With the times that the rig's counter gives, where the profile says so; what it settled is no doubt any more. */
  #rebuilt(times: ResolvedTimes, zone: Zone | null): ResolvedTimes {
    if (!this.#profile.isRebuilt) return times;
    const { iso, rebuilt } = rebuildTimes(times.iso, this.#counters, zone);
    const [first] = rebuilt;
    if (first === undefined) return times;
    const count = rebuilt.length === 1 ? '1 row' : `${rebuilt.length} rows`;
    const message = `the clock does not go with the seconds that the rig counts: the times of ${count} are rebuilt from these (export.time.rebuild), and uncertain`;
    const { line } = this.drops[first]!;
    this.findings.push({ code: 'time-rebuilt', message, line, column: null });
    const settled = new Set(rebuilt.map((i) => this.#times[i]));
    const left = (rows: readonly RowTime[]) => rows.filter((row) => !settled.has(row));
    // A clock that is right again goes back against one that was not.
    const back = times.back.filter((row) => !settled.has(row) && !isInOrder(iso, this.#times.indexOf(row)));
    return { iso, open: left(times.open), impossible: left(times.impossible), back };
  }

  #findTimes({ open, back }: ResolvedTimes): void {
    const rows = (count: number) => (count === 1 ? '1 row' : `${count} rows`);
    if (open.length > 0) {
      const message = `${rows(open.length)} in the hour that autumn doubles, and nothing says the first or the second time round: their times are kept without offset and order nothing`;
      this.findings.push({ code: 'time-uncertain', message, ...open[0]!.place });
    }
    if (back.length > 0) {
      const message = `the clock goes back at ${rows(back.length)}: the order of the rows is kept, the times are uncertain`;
      this.findings.push({ code: 'clock-back', message, ...back[0]!.place });
    }
  }
}

const OUTCOME_SETTLED = {
  code: 'unknown-outcome',
  message:
    'the profile says what it means (export.outcomes.failed, export.outcomes.survived, export.outcomes.not-evaluable)',
};
const VALID_SETTLED = {
  code: 'unknown-word',
  message: 'the profile says what it means (export.valid.yes, export.valid.no)',
};

const CATCHER_SETTLED = {
  code: 'unknown-word',
  message:
    'the profile says what it means (export.catcher.in-time, export.catcher.early, export.catcher.missed)',
};

/** s: more than 300 years of counting are none. */
const UPTIME = { unit: 's', least: 0, most: 1e10 } as const;

function isInOrder(iso: readonly (string | null)[], i: number): boolean {
  const [before, now] = [iso[i - 1], iso[i]].map((text) => (text == null ? null : instantOf(text)));
  return before != null && now != null && now >= before;
}

function tellsSeconds({ time }: ExportProfile): boolean {
  return time !== null && (time.kind !== 'clock' || time.format.pattern.includes('ss'));
}
