import type { Side } from '../../comparison/side.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { rememberingLibrary } from '../../documents/library.ts';
import { InputError, type Problem } from '../../problem/problem.ts';
import type { Input } from '../../result/analysis.ts';
import type { ComparedSample } from '../../result/comparison.ts';
import type { LawName } from '../../statistics/law.ts';
import { documentsOf } from '../documents-of.ts';
import type { EnduranceTest } from '../endurance-test.ts';
import { type ImpactTest, readImpactTest } from '../impact-test.ts';
import { type ImpactSide, impactSides } from './impact-sides.ts';

/** The runs of a comparison, read. */
export interface ReadRuns {
  readonly kind: 'impact' | 'endurance';
  /** That of the first run, by which all are compared; and all that the protocols name. */
  readonly law: LawName;
  readonly laws: readonly LawName[];
  readonly confidence: number;
  /** Of drop tests. */
  readonly protocols: readonly ImpactProtocol[];
  readonly inputs: readonly Input[];
  readonly sides: readonly Side[];
  readonly unread: readonly { readonly path: string; readonly problems: readonly Problem[] }[];
  /** Why runs of two kinds cannot be compared; empty as a rule. */
  readonly mixed: readonly string[];
}

type Test =
  | { readonly kind: 'impact'; readonly path: string; readonly test: ImpactTest }
  | { readonly kind: 'endurance'; readonly path: string; readonly test: EnduranceTest };

/**
 * Reads runs and parts each into its samples. One that cannot be read is told, and stops none of the others.
 *
 * @throws InputError where none can be read
 */
export async function readRuns(
  paths: readonly string[],
  onProgress: (done: number, all: number) => void = () => {},
): Promise<ReadRuns> {
  const library = rememberingLibrary();
  const tests: Test[] = [];
  const unread: { path: string; problems: readonly Problem[] }[] = [];
  for (const [i, path] of paths.entries()) {
    try {
      const documents = documentsOf({ kind: 'run', path }, NO_INPUT, library);
      const { protocol } = documents;
      if (protocol.kind === 'impact')
        tests.push({ kind: 'impact', path, test: await readImpactTest(documents) });
      else {
        // Loaded only for drum tests: drop tests need not wait for what reads millions of rows.
        const { readEnduranceTest } = await import('../endurance-test.ts');
        tests.push({ kind: 'endurance', path, test: await readEnduranceTest({ ...documents, protocol }) });
      }
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      unread.push({ path, problems: error.problems });
    }
    onProgress(i + 1, paths.length);
  }
  const [first] = tests;
  if (first === undefined) throw new InputError(unread.flatMap(({ problems }) => problems));
  const { kind } = first;
  const { distribution: law, confidence } = first.test.protocol;
  const sides: Side[] = [];
  for (const one of tests.filter((test) => test.kind === kind)) sides.push(...(await sidesOf(one, law)));
  return {
    kind,
    law,
    laws: [...new Set(tests.map(({ test }) => test.protocol.distribution))],
    confidence,
    protocols: tests.flatMap((one) => (one.kind === 'impact' ? [one.test.protocol] : [])),
    inputs: tests.flatMap(({ test }) => test.inputs),
    sides,
    unread,
    mixed: tests.every((test) => test.kind === kind)
      ? []
      : ['drop tests and drum tests are no measure of each other: compare them apart'],
  };
}

/** The samples of a run, all by the law of the first one. */
async function sidesOf(one: Test, distribution: LawName): Promise<Side[]> {
  if (one.kind === 'impact') {
    const { test, path } = one;
    return impactSides({ ...test, protocol: { ...test.protocol, distribution } }, path);
  }
  const { drumSides } = await import('./drum-sides.ts');
  return drumSides(one.test, one.path);
}

/** A run names its logs; nothing is read from standard input. */
const NO_INPUT: AsyncIterable<Uint8Array> = { async *[Symbol.asyncIterator]() {} };

export function isImpactSide(side: Side): side is ImpactSide {
  return 'evidence' in side;
}

/** Names by construction, with the run, the rig or the rim behind where that does not tell them apart. */
export function labelled(sides: readonly Side[]): Side[] {
  const called = ({ construction, role }: ComparedSample) =>
    `${construction.id}@${construction.revision}${role === 'reference' ? ', reference' : ''}`;
  const names = sides.map(({ sample }) => called(sample));
  const withRun = sides.map(({ sample }, i) =>
    names.filter((name) => name === names[i]).length === 1
      ? names[i]!
      : `${names[i]} (${sample.run ?? sample.path})`,
  );
  return sides.map((side, i) => {
    const isAlone = withRun.filter((name) => name === withRun[i]).length === 1;
    const own = isAlone || !isImpactSide(side) ? '' : `, ${side.evidence.name ?? i + 1}`;
    return { ...side, sample: { ...side.sample, label: `${withRun[i]}${own}` } };
  });
}
