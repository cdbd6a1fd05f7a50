import type { Frame } from './frame.ts';

/** Minutes that are remembered: a day, longer than any buffer of a rig. */
const REMEMBERED = 1440;

/** Compares minutes that a log writes a second time with what it wrote first, in constant memory. */
export class Rewritten {
  /** Whole minutes that stand twice with the same rows, and with others. */
  same = 0;
  different = 0;
  /** First of the different ones. */
  firstDifferent: { readonly file: number; readonly line: number } | null = null;
  readonly #known = new Map<string, readonly number[]>();
  #latest = Number.NEGATIVE_INFINITY;
  /** Last minute of the stretch that is being written again: a clock that was put back rewrites nothing. */
  #until = Number.NEGATIVE_INFINITY;

  /** Takes every whole minute in order. */
  meet(frame: Frame): void {
    const key = `${frame.minute} ${frame.state}`;
    if (frame.events?.byKind.has('overlap')) this.#until = this.#latest;
    else if (frame.minute > this.#until) this.#until = Number.NEGATIVE_INFINITY;
    const before = frame.minute <= this.#until ? this.#known.get(key) : undefined;
    const content = contentOf(frame);
    if (before !== undefined) this.#compare(before, content, frame);
    else this.#remember(key, content);
    this.#latest = Math.max(this.#latest, frame.minute);
  }

  #compare(before: readonly number[], content: readonly number[], { ranges, first }: Frame): void {
    // A minute of which only a part stands twice says nothing of the rest.
    if (before[0] !== content[0]) return;
    if (before.every((number, i) => Object.is(number, content[i]))) {
      this.same += 1;
      return;
    }
    this.different += 1;
    this.firstDifferent ??= { file: ranges[0]!.file, line: first.line };
  }

  #remember(key: string, content: readonly number[]): void {
    this.#known.set(key, content);
    if (this.#known.size > REMEMBERED) this.#known.delete(this.#known.keys().next().value!);
  }
}

/** All that a minute holds but where it stands; the number of its rows first. */
function contentOf({ rows, channels, first, last }: Frame): number[] {
  const numbers = [rows, first.time, last.time, ...first.columns, ...last.columns];
  for (const { count, sum, squares, min, max } of channels) numbers.push(count, sum, squares, min, max);
  return numbers;
}
