import { InputError, type Problem, problemLine } from '../problem/problem.ts';
import { problemsDocument } from '../reports/problems.ts';
import { EXIT, type Shell, write } from './shell.ts';

/** Words on the command line that do not go together: wrong use, told like a problem that no file has. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** How a command that threw is told to its user. */
export interface FailureOptions {
  readonly json: boolean;
  readonly debug: boolean;
}

/**
 * Says what went wrong and gives the exit status: problems of the input, one line each, are status 2; everything
 * else is a fault of the program itself, status 70, without a stack trace unless it was asked for.
 */
export async function reportFailure(shell: Shell, error: unknown, options: FailureOptions): Promise<number> {
  if (error instanceof InputError) {
    await reportProblems(shell, error.problems, options);
    return EXIT.wrongUse;
  }
  if (error instanceof UsageError) return reportUsage(shell, error.message, options.json);
  const { message, stack } = error instanceof Error ? error : new Error(String(error));
  const detail = options.debug
    ? `\n${stack}`
    : '\nRun again with --debug for the trace, and please report it.';
  await write(shell.stderr, `tirelab: a fault in the program itself: ${message}${detail}\n`);
  return EXIT.fault;
}

/** Says that the command line itself is wrong; exit status 2. */
export async function reportUsage(shell: Shell, message: string, json: boolean): Promise<number> {
  await write(shell.stderr, `tirelab: ${message}\n`);
  if (json) {
    const place = { file: null, line: null, column: null };
    await write(shell.stdout, problemsDocument([{ ...place, code: 'usage', message }]));
  }
  return EXIT.wrongUse;
}

async function reportProblems(
  shell: Shell,
  problems: readonly Problem[],
  options: FailureOptions,
): Promise<void> {
  await write(shell.stderr, problems.map((problem) => `${problemLine(problem)}\n`).join(''));
  if (options.json) await write(shell.stdout, problemsDocument(problems));
}
