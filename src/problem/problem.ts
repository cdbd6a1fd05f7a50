import { echo } from './echo.ts';

/** One thing wrong with one input, at the place where a person would mend it. */
export interface Problem {
  /** Path as the user gave it. */
  readonly file: string;
  /** One-based; null where the whole file is meant. */
  readonly line: number | null;
  /** One-based; null where the whole line is meant. */
  readonly column: number | null;
  /** Stable kebab-case word, such as `unknown-key`: what scripts and tests hold on to. */
  readonly code: string;
  /** What was found, what was expected, and what settles it. */
  readonly message: string;
}

/** Wrong use, or input that cannot be read or is not valid: nothing was evaluated (exit status 2). */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'));
    this.problems = problems;
  }
}

/** `file:line:column: message`, without the parts that are not known; the path is made safe to print. */
export function problemLine(problem: Problem): string {
  const place = [echo(problem.file, 400), problem.line, problem.column].filter((part) => part !== null);
  return `${place.join(':')}: ${problem.message}`;
}

/** So many problems of one code and file are told one by one. */
export const MOST_PROBLEMS = 20;

/**
 * Collects the problems of an input, so that all are reported at once and a log of a million bad rows does not
 * print a million lines: of each code and file the first `most` are kept, the rest are counted.
 */
export class ProblemList {
  readonly #kept: Problem[] = [];
  readonly #counts = new Map<string, { file: string; code: string; count: number }>();
  readonly #most: number;

  constructor(most = MOST_PROBLEMS) {
    this.#most = most;
  }

  add(problem: Problem): void {
    const key = `${problem.file}\n${problem.code}`;
    const seen = this.#counts.get(key) ?? { file: problem.file, code: problem.code, count: 0 };
    seen.count += 1;
    this.#counts.set(key, seen);
    if (seen.count <= this.#most) this.#kept.push(problem);
  }

  /** Counts further problems of a code that whoever met them did not keep: at least as many as are kept stand before. */
  addMore(file: string, code: string, count: number): void {
    const seen = this.#counts.get(`${file}\n${code}`);
    if (seen) seen.count += count;
  }

  get isEmpty(): boolean {
    return this.#kept.length === 0;
  }

  /** The kept problems in the order they were met, then one line for each code that was cut short. */
  all(): readonly Problem[] {
    const cut = [...this.#counts.values()]
      .filter((seen) => seen.count > this.#most)
      .map(({ file, code, count }) => ({
        file,
        line: null,
        column: null,
        code,
        message: `and ${count - this.#most} more of this kind (${code})`,
      }));
    return [...this.#kept, ...cut];
  }

  /** @throws InputError when anything was collected. */
  throwIfAny(): void {
    if (!this.isEmpty) throw new InputError(this.all());
  }
}
