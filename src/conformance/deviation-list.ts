import { counted } from '../quantity/format.ts';
import { catalogued } from './catalogue/catalogue.ts';
import { HEAVIER } from './catalogue/heavier.ts';
import type { Deviation, ListedDeviation, Scope, Severity } from './deviation.ts';

/** Of each code so many stand alone; those beyond are summed up (CONTRACT: not errors). */
const LISTED_ALONE = 20;

/** A deviation as a check knows it; severity, scope and effect are the catalogue's unless given. */
export interface Raised {
  readonly code: string;
  /** What was found and what was planned, without a full stop; asked for only where it will be listed. */
  found(): string;
  readonly effect?: string;
  readonly severity?: Severity;
  readonly scope?: Scope;
  readonly file?: string;
  readonly line?: number;
  readonly specimen?: string;
  readonly drop?: number;
}

/** What a deviation weighs, and whether the protocol made it heavier than usual. */
export interface Weight {
  readonly severity: Severity;
  readonly scope: Scope;
  readonly isHeavier: boolean;
}

const COUNTED = 'the protocol weighs it heavier than usual (heavier)';
const CONSEQUENCE: Readonly<Record<Scope, string>> = {
  drop: 'the drop is left out of the estimate',
  interval: 'the stretch is left out',
  specimen: 'the drops of the specimen are left out of the estimate',
  run: 'no estimate can be trusted',
  comparison: 'results are comparable only within one state of it',
};

const WEIGHT: Readonly<Record<Severity, number>> = { note: 0, minor: 1, invalidating: 2 };

/**
 * Collects deviations in constant memory a code: a log of a million bad rows neither keeps nor prints a million
 * sentences, and yet all of them count.
 */
export class DeviationList {
  readonly #alone: Deviation[] = [];
  readonly #counts = new Map<string, number>();
  readonly #beyond = new Map<string, ListedDeviation & { firstLine: number; lastLine: number }>();
  #heaviest: Severity | null = null;
  readonly #condemning = new Map<string, Scope>();
  readonly #heavier: ReadonlySet<string>;

  /** @param heavier codes that the protocol weighs heavier than usual, where the check does not settle the weight */
  constructor(heavier: Iterable<string> = []) {
    this.#heavier = new Set(heavier);
  }

  /** @returns what the deviation weighs */
  add(given: Raised): Weight {
    const entry = catalogued(given.code);
    const raised = this.#weighed(given);
    const severity = raised.severity ?? entry.severity;
    const scope = raised.scope ?? entry.scope;
    if (this.#heaviest === null || WEIGHT[severity] > WEIGHT[this.#heaviest]) this.#heaviest = severity;
    if (severity === 'invalidating' && (scope === 'run' || scope === 'comparison')) {
      if (!this.#condemning.has(raised.code)) this.#condemning.set(raised.code, scope);
    }
    const line = raised.line ?? null;
    const count = (this.#counts.get(raised.code) ?? 0) + 1;
    // What concerns the whole run has no line to be summed up by, and there is little of it.
    if (line !== null) this.#counts.set(raised.code, count);
    if (line !== null && count > LISTED_ALONE) this.#sumUp(raised, severity, scope, line);
    else {
      this.#alone.push({
        code: raised.code,
        severity,
        scope,
        message: `${raised.found()}; ${raised.effect ?? entry.effect}.`,
        file: raised.file ?? null,
        line,
        specimen: raised.specimen ?? null,
        drop: raised.drop ?? null,
      });
    }
    return { severity, scope, isHeavier: raised !== given };
  }

  /** With the heavier weight and what it does, where the protocol asks for it. */
  #weighed(raised: Raised): Raised {
    const heavier = this.#heavier.has(raised.code) ? HEAVIER.get(raised.code) : undefined;
    if (heavier === undefined || raised.severity !== undefined) return raised;
    const { severity } = heavier;
    const scope = raised.scope ?? heavier.scope;
    const effect = severity === 'minor' ? COUNTED : `${COUNTED}: ${CONSEQUENCE[scope]}`;
    return { ...raised, severity, scope, effect };
  }

  /** The heaviest severity met; null where there was nothing. */
  get heaviest(): Severity | null {
    return this.#heaviest;
  }

  /** The codes of deviations that invalidate the whole run or comparison, with which of the two. */
  get condemning(): ReadonlyMap<string, Scope> {
    return this.#condemning;
  }

  /** Those that stand alone, by line, those of the whole run last; then one entry for each code that was cut short. */
  listed(): readonly ListedDeviation[] {
    const alone = this.#alone.map((deviation) => ({ ...deviation, count: 1 }));
    const withLine = alone.filter(({ line }) => line !== null);
    const files = new Map([...new Set(withLine.map(({ file }) => file))].map((file, place) => [file, place]));
    withLine.sort((a, b) => files.get(a.file)! - files.get(b.file)! || a.line! - b.line!);
    const beyond = [...this.#beyond.values()].map((sum) => ({
      ...sum,
      message:
        `${counted(sum.count, 'more deviation')} of this kind (${catalogued(sum.code).title}), ` +
        `lines ${sum.firstLine} to ${sum.lastLine}; ${catalogued(sum.code).effect}.`,
    }));
    return [...withLine, ...alone.filter(({ line }) => line === null), ...beyond];
  }

  #sumUp(raised: Raised, severity: Severity, scope: Scope, line: number): void {
    const sum = this.#beyond.get(raised.code);
    const file = raised.file ?? null;
    this.#beyond.set(raised.code, {
      code: raised.code,
      severity: sum && WEIGHT[sum.severity] > WEIGHT[severity] ? sum.severity : severity,
      scope: sum?.scope ?? scope,
      message: '',
      file: sum && sum.file !== file ? null : file,
      line: sum?.line ?? line,
      specimen: null,
      drop: null,
      count: (sum?.count ?? 0) + 1,
      firstLine: Math.min(sum?.firstLine ?? line, line),
      lastLine: Math.max(sum?.lastLine ?? line, line),
    });
  }
}
