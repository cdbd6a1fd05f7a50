import { echo } from '../../problem/echo.ts';
import { type Problem, problemLine } from '../../problem/problem.ts';

/** What is wrong with the files of one run of many, one line a problem, under the run's own path. */
export function unreadLines(file: string, problems: readonly Problem[]): string {
  const lines = problems.map((problem) => `${problemLine(problem)}\n`).join('');
  // A run whose own file is at fault is named by its problem already.
  return problems.every((problem) => problem.file === file)
    ? lines
    : `not read: ${echo(file, 400)}\n${lines}`;
}
