import { createHash } from 'node:crypto';
import { quote } from '../problem/echo.ts';
import { InputError } from '../problem/problem.ts';
import { suggest } from '../problem/suggest.ts';
import { construction } from './construction.ts';
import type { YamlDocument } from './findings.ts';
import type { Construction, Protocol, Rig, Run, Specification, Waiver } from './kinds.ts';
import { protocol } from './protocol.ts';
import { readDocumentBytes } from './read-file.ts';
import { rig } from './rig.ts';
import { run } from './run.ts';
import { specification } from './specification.ts';
import { decodeText } from './text.ts';
import { waiver } from './waiver.ts';
import { parseYaml } from './yaml.ts';
import { isMap, type Yaml } from './yaml-value.ts';

/** The kinds of document by the `format` that stands in their first line. */
const FORMATS = {
  protocol: 'tirelab.protocol/1',
  rig: 'tirelab.rig/1',
  construction: 'tirelab.construction/1',
  specification: 'tirelab.specification/1',
  run: 'tirelab.run/1',
  waiver: 'tirelab.waiver/1',
} as const;

export type DocumentKind = keyof typeof FORMATS;

/** Where a document is: what to open, and how messages and results call it (the same, if not given). */
export interface Whereabouts {
  readonly path: string;
  readonly named?: string;
}

/** @throws InputError with everything that is wrong with the file. So do the others. */
export const loadProtocol = (where: Whereabouts): Protocol => protocol(loadDocument(where, 'protocol'));
export const loadRig = (where: Whereabouts): Rig => rig(loadDocument(where, 'rig'));
export const loadConstruction = (where: Whereabouts): Construction =>
  construction(loadDocument(where, 'construction'));
/** The same for the bytes of a construction, as an earlier commit has them. */
export const constructionAt = (bytes: Uint8Array, named: string): Construction =>
  construction(documentOf(bytes, named, 'construction'));
export const loadSpecification = (where: Whereabouts): Specification =>
  specification(loadDocument(where, 'specification'));
export const loadRun = (where: Whereabouts): Run => run(loadDocument(where, 'run'));
export const loadWaiver = (where: Whereabouts): Waiver => waiver(loadDocument(where, 'waiver'));

/**
 * Reads a YAML file and sees that it is of the kind expected; what its keys hold is for the kind to read.
 *
 * @throws InputError where the file cannot be read, is no YAML, or is something else.
 */
export function loadDocument({ path, named = path }: Whereabouts, expected: DocumentKind): YamlDocument {
  return documentOf(readDocumentBytes(path, named), named, expected);
}

/** The same for bytes at hand. */
export function documentOf(bytes: Uint8Array, named: string, expected: DocumentKind): YamlDocument {
  const { value, locate } = parseYaml(decodeText(bytes, named), named);
  const refuse = (code: string, message: string): InputError =>
    new InputError([{ file: named, ...locate(['format']), code, message }]);
  const article = expected === 'run' ? 'a run' : `a ${expected}`;
  const wanted = `${article} (format: ${FORMATS[expected]})`;
  if (!isMap(value)) {
    const found = typeof value === 'string' ? 'plain text' : 'a list';
    throw refuse('not-a-document', `found ${found}, expected ${wanted}; is it the right file?`);
  }
  const { format } = value;
  if (format === undefined) {
    throw refuse('missing-key', `the key "format" is missing; add it: "format: ${FORMATS[expected]}"`);
  }
  if (format !== FORMATS[expected]) {
    throw refuse('wrong-format', `found ${describe(format)}, expected ${wanted}`);
  }
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return { source: { path: named, sha256, bytes: bytes.length, locate }, value };
}

function describe(format: Yaml): string {
  if (typeof format !== 'string') return 'a format that is no text';
  const kind = Object.entries(FORMATS).find(([, known]) => known === format)?.[0];
  if (kind) return `a ${kind} (format: ${format})`;
  const near = suggest(format, Object.values(FORMATS));
  return `the unknown format ${quote(format)}${near === null ? '' : ` (near to ${near})`}`;
}
