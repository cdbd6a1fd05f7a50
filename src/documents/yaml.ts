import { Composer, type Document, type LineCounter, LineCounter as Lines, Parser } from 'yaml';
import { InputError, type Problem } from '../problem/problem.ts';
import { depthOf } from './depth.ts';
import { type Placed, place } from './placed.ts';
import type { Path, Yaml } from './yaml-value.ts';

export interface Position {
  readonly line: number;
  readonly column: number;
}

export interface ParsedYaml {
  readonly value: Yaml;
  /** One-based place of a value or of its key; where the path is not there, of the nearest thing above it. */
  locate(path: Path, part?: 'key' | 'value'): Position;
}

const DEEPEST = 40;
const MOST_SYNTAX_ERRORS = 20;

/**
 * Reads one YAML 1.2 document without giving its scalars a type (failsafe schema): `1.10` stays `1.10`, `0412`
 * stays `0412`, `no` stays `no`.
 *
 * @throws InputError with every syntax error, doubled key, unknown tag; for an empty text, several documents,
 * nesting beyond 40 levels, and aliases that would unfold into a heap of values.
 */
export function parseYaml(text: string, path: string): ParsedYaml {
  const lines = new Lines();
  const at = (offset: number): Position => positionOf(lines, offset);
  const refuse = (offset: number, code: string, message: string): InputError =>
    new InputError([{ file: path, ...at(offset), code, message }]);

  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  // Before composing: the composer calls itself for each level, and a deep enough file would take the process down.
  const deepest = depthOf(tokens);
  if (deepest.depth > DEEPEST) {
    throw refuse(
      deepest.offset,
      'too-deep',
      `found more than ${DEEPEST} levels of nesting, expected a few; unfold the document`,
    );
  }
  const composer = new Composer({ schema: 'failsafe', uniqueKeys: false, prettyErrors: false });
  const [document, second] = [...composer.compose(tokens, true, text.length)];
  const faults = document ? syntaxProblems(document, path, at) : [];
  if (faults.length > 0) throw new InputError(faults);
  if (second) {
    const found = 'found a second document, expected one in a file; move it to a file of its own';
    throw refuse(second.range[0], 'several-documents', found);
  }
  if (!document?.contents) {
    throw refuse(0, 'empty-file', 'found nothing, expected a YAML document that begins with its "format"');
  }
  const problems: Problem[] = [];
  const root = place(document.contents, (offset, code, message) =>
    problems.push({ file: path, ...at(offset), code, message }),
  );
  if (problems.length > 0) throw new InputError(problems);
  return { value: root.value, locate: (steps, part = 'value') => at(offsetOf(root, steps, part)) };
}

function syntaxProblems(
  document: Document.Parsed,
  file: string,
  at: (offset: number) => Position,
): Problem[] {
  const problems = new Map<number, Problem>();
  for (const { pos, code, message } of [...document.errors, ...document.warnings]) {
    // One fault upsets the parser more than once: the first word about a place is the useful one.
    if (problems.has(pos[0]) || problems.size >= MOST_SYNTAX_ERRORS) continue;
    problems.set(pos[0], { file, ...at(pos[0]), ...explain(code, message) });
  }
  return [...problems.values()];
}

function explain(code: string, message: string): { code: string; message: string } {
  if (code === 'TAB_AS_INDENT') {
    return { code: 'yaml-syntax', message: 'found a tab as indentation, expected spaces; replace the tab' };
  }
  if (code === 'TAG_RESOLVE_FAILED') {
    return {
      code: 'yaml-tag',
      message: `found a YAML tag (${message}), expected plain values; remove the tag`,
    };
  }
  return { code: 'yaml-syntax', message: `not valid YAML: ${message}; mend the line` };
}

function positionOf(lines: LineCounter, offset: number): Position {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function offsetOf(root: Placed, path: Path, part: 'key' | 'value'): number {
  let here = root;
  let offset = root.offset;
  for (const [depth, step] of path.entries()) {
    const child = here.children?.get(step);
    if (!child) break;
    const wantsKey = part === 'key' && depth === path.length - 1;
    offset = wantsKey ? child.keyOffset : child.placed.offset;
    here = child.placed;
  }
  return offset;
}
