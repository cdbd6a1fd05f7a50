/** What `--json` prints in place of a result when nothing was evaluated (exit status 2). */
export function problemsDocument(
  problems: readonly {
    /** Null for wrong use of the command line. */
    readonly file: string | null;
    readonly line: number | null;
    readonly column: number | null;
    readonly code: string;
    readonly message: string;
  }[],
): string {
  const listed = problems.map(({ file, line, column, code, message }) => ({
    file,
    line,
    column,
    code,
    message,
  }));
  return `${JSON.stringify({ schema: 'tirelab.problems/1', problems: listed }, null, 2)}\n`;
}
