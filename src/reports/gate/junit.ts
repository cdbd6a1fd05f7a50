import { echo } from '../../problem/echo.ts';
import { problemLine } from '../../problem/problem.ts';
import type { GatedConstruction, GatedCriterion, GateResult } from '../../result/gate.ts';
import { escaped } from '../charts/svg.ts';
import { verdictWord } from '../text/names.ts';
import { waiverSentence } from './words.ts';

/**
 * JUnit XML that both public schemas of it allow and that CI systems show: a suite for each construction and
 * specification, a case for each criterion. What is neither passed, waived nor external is a `failure` with the
 * verdict as its type; a run that cannot be read is an `error`; a waived one passes with the waiver as its output. No times: they would differ from run to run.
 */
export function gateJunit(result: GateResult): string {
  const suites = [...result.judged.map(suiteOf), ...errorSuite(result)];
  const sum = (key: 'tests' | 'failures' | 'errors') =>
    suites.reduce((total, suite) => total + suite[key], 0);
  const head = `<testsuites name="tirelab gate" tests="${sum('tests')}" failures="${sum('failures')}" errors="${sum('errors')}" time="0">`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${head}\n${suites.map(({ xml }) => xml).join('')}</testsuites>\n`;
}

interface Suite {
  readonly tests: number;
  readonly failures: number;
  readonly errors: number;
  readonly xml: string;
}

function suiteOf({ construction, specification, criteria }: GatedConstruction): Suite {
  const name = `${construction.id}@${construction.revision} by ${specification.id}@${specification.version}`;
  const failures = criteria.filter(isFailure).length;
  const skipped = criteria.filter(({ verdict }) => verdict === 'external').length;
  const cases = criteria.map((criterion) => caseOf(criterion, name)).join('');
  const counts = `tests="${criteria.length}" failures="${failures}" errors="0" skipped="${skipped}" time="0"`;
  return {
    tests: criteria.length,
    failures,
    errors: 0,
    xml: `  <testsuite name="${safe(name)}" ${counts}>\n${cases}  </testsuite>\n`,
  };
}

function caseOf(criterion: GatedCriterion, suite: string): string {
  const head = `    <testcase name="${safe(criterion.id)}" classname="${safe(suite)}" time="0"`;
  if (isFailure(criterion)) {
    const message = [`${verdictWord(criterion.verdict)}: ${criterion.why}`, ...criterion.notes].join('; ');
    return `${head}>\n      <failure type="${criterion.verdict}" message="${safe(message)}">${safe(message)}</failure>\n    </testcase>\n`;
  }
  if (criterion.verdict === 'external')
    return `${head}>\n      <skipped>${safe(criterion.why)}</skipped>\n    </testcase>\n`;
  // A waiver is always visible: the case passes, and says on whose word.
  if (criterion.waiver !== null)
    return `${head}>\n      <system-out>${safe(waiverSentence(criterion.waiver))}</system-out>\n    </testcase>\n`;
  return `${head}/>\n`;
}

function isFailure({ verdict }: GatedCriterion): boolean {
  return verdict !== 'pass' && verdict !== 'waived' && verdict !== 'external';
}

function errorSuite({ unreadable }: GateResult): Suite[] {
  if (unreadable.length === 0) return [];
  const count = unreadable.length;
  const cases = unreadable
    .map(({ path, problems }) => {
      const text = problems.map(problemLine).join('\n');
      return `    <testcase name="${safe(path)}" classname="runs" time="0">\n      <error type="unreadable" message="${safe(problems[0]?.message ?? '')}">${safe(text, 4000)}</error>\n    </testcase>\n`;
    })
    .join('');
  return [
    {
      tests: count,
      failures: 0,
      errors: count,
      xml: `  <testsuite name="runs" tests="${count}" failures="0" errors="${count}" skipped="0" time="0">\n${cases}  </testsuite>\n`,
    },
  ];
}

/** Characters that XML 1.0 forbids never reach it: `echo` writes them as escapes. */
function safe(text: string, most = 1000): string {
  return text
    .split('\n')
    .map((line) => escaped(echo(line, most)))
    .join('\n');
}
