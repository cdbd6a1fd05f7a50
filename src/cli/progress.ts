import type { Shell } from './shell.ts';

/** A line on a terminal that is drawn over itself while work goes on, and wiped when it is done. */
export interface Progress {
  /** @param rows read so far, where what is done is bytes of a log */
  update(done: number, total: number, rows?: number): void;
  end(): void;
}

export interface ProgressOptions {
  readonly quiet?: boolean | undefined;
  /** `--no-progress` makes it false. */
  readonly progress?: boolean | undefined;
}

/** Between two pictures, ms. */
const PAUSE = 100;
const BAR = 24;

/**
 * Progress on standard error: only on a terminal, and neither under CI, nor with `--quiet` or `--no-progress`.
 *
 * @param noun what is counted, such as `tests`
 * @param now a clock in ms
 */
export function progressLine(
  shell: Shell,
  { quiet, progress }: ProgressOptions,
  noun: string,
  now: () => number,
): Progress {
  const silent =
    !shell.stderr.isTTY ||
    shell.env.TERM === 'dumb' ||
    Boolean(shell.env.CI) ||
    quiet === true ||
    progress === false;
  if (silent) return { update: () => {}, end: () => {} };
  const began = now();
  let shown = -Infinity;
  const wipe = () => shell.stderr.write('\r\u001b[2K');
  return {
    update(done, total, rows) {
      const at = now();
      if (at - shown < PAUSE && done < total) return;
      shown = at;
      const share = total === 0 ? 1 : done / total;
      const filled = Math.round(share * BAR);
      const bar = '#'.repeat(filled) + '.'.repeat(BAR - filled);
      wipe();
      const what =
        rows === undefined
          ? `${done} of ${total} ${noun}`
          : `${rowsText(rows)}, ${speed(done, at - began)} MB/s`;
      shell.stderr.write(`[${bar}] ${Math.floor(100 * share)} %  ${what}${left(at - began, share)}`);
    },
    end: wipe,
  };
}

/** `1,210,000 rows`. */
function rowsText(rows: number): string {
  return `${String(rows).replaceAll(/(?<=\d)(?=(?:\d{3})+$)/gu, ',')} rows`;
}

function speed(bytes: number, milliseconds: number): string {
  return (bytes / 1000 / Math.max(1, milliseconds)).toFixed(0);
}

function left(elapsed: number, share: number): string {
  if (share <= 0 || share >= 1 || elapsed < 500) return '';
  const seconds = Math.ceil((elapsed * (1 - share)) / share / 1000);
  return seconds < 90 ? `, ${seconds} s left` : `, ${Math.ceil(seconds / 60)} min left`;
}
