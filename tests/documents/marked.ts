import { construction } from '../../src/documents/construction.ts';
import { type DocumentKind, documentOf } from '../../src/documents/load.ts';
import { protocol } from '../../src/documents/protocol.ts';
import { rig } from '../../src/documents/rig.ts';
import { run } from '../../src/documents/run.ts';
import { specification } from '../../src/documents/specification.ts';
import { waiver } from '../../src/documents/waiver.ts';
import { InputError } from '../../src/problem/problem.ts';

const READERS = { protocol, rig, construction, specification, run, waiver };

export function read<K extends DocumentKind>(kind: K, text: string): ReturnType<(typeof READERS)[K]> {
  const document = documentOf(Buffer.from(text), 'a.yaml', kind);
  return READERS[kind](document) as ReturnType<(typeof READERS)[K]>;
}

/** `line:column code` of every problem of a text; empty where it is good. */
export function problemsOf(kind: DocumentKind, text: string): string[] {
  return messagesOf(kind, text).map(({ line, column, code }) => `${line}:${column} ${code}`);
}

export function messagesOf(kind: DocumentKind, text: string): InputError['problems'] {
  try {
    read(kind, text);
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

/**
 * A document in which `▶` stands before each place where a problem is to be found, and the codes of those in order:
 * the text without the marks, and the problems as `problemsOf` gives them.
 */
export function marked(text: string, ...codes: readonly string[]): { text: string; expected: string[] } {
  const expected: string[] = [];
  const lines = text.split('\n').map((line, row) => {
    const [first, ...rest] = line.split('▶');
    let clean = first!;
    for (const part of rest) {
      expected.push(`${row + 1}:${clean.length + 1} ${codes[expected.length]}`);
      clean += part;
    }
    return clean;
  });
  return { text: lines.join('\n'), expected };
}
