import { CATALOGUE, codeIn } from '../conformance/catalogue/catalogue.ts';
import { quote } from '../problem/echo.ts';
import { block, either, list, optional } from './blocks.ts';
import { name, prose, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Run, RunRequest } from './kinds.ts';
import { once } from './once.ts';
import { readFields, type Whole } from './read-fields.ts';
import { reportShape, requestShape } from './request.ts';

const replaces = () =>
  block(
    {
      run: name('Path of the run that this one repeats. Both are kept.'),
      reason: name('Code of the catalogue for which it had to be repeated, such as DROP-20.'),
      approver: name('Who approved the repetition.'),
    },
    'A retest: which run it repeats, why, and on whose word.',
  );

/** The keys of a run. */
export const runShape = once(() => ({
  format: word(['tirelab.run/1'], 'What this file is.'),
  id: name('Name of the run.'),
  title: optional(prose('What the run is about, for people.')),
  protocol: name('Path of the protocol. All paths are relative to this file.'),
  rig: optional(name('Path of the rig.')),
  constructions: optional(
    list(
      either(
        name('Path of a construction.'),
        block(
          {
            file: name('Path of a construction.'),
            revision: name('The revision that was tested: an error once the file has another.'),
          },
          'A construction, and the revision of it that was tested.',
        ),
        'Path of a construction; { file: …, revision: … } to hold its file to a revision.',
      ),
      'What was tested.',
    ),
  ),
  specification: optional(name('Path of the specification to judge against.')),
  specimens: optional(name('Path of the table of specimens.')),
  logs: list(
    either(
      name('Path of a log.'),
      block(
        {
          file: name('Path of a log.'),
          rig: name('Path of the rig that wrote it, where it is not the rig of the run.'),
        },
        'A log, and the rig that wrote it.',
      ),
      'Path of a log; { file: …, rig: … } where another rig wrote it.',
    ),
    "The rig's logs; several are one test.",
    1,
  ),
  amendments: optional(name('Path of the table of amendments.')),
  mountings: optional(name('Path of the table of mountings: rim, tube, sealant, insert.')),
  checks: optional(name('Path of the table of rig checks: daily, reference, base, gauge.')),
  replaces: optional(replaces()),
  inspections: optional(name('Path of the table of inspections of a drum test.')),
  events: optional(name('Path of the table of events of a drum test.')),
  ...reportShape(),
}));

/**
 * A run from its document; its paths are as written.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function run(document: YamlDocument): Run {
  const findings = new Findings(document);
  const fields = readFields(runShape(), document.value, [], findings);
  checkPaths('logs', (fields.logs ?? []).map(namedFile), findings);
  checkPaths('constructions', (fields.constructions ?? []).map(namedFile), findings);
  checkRetest(fields.replaces?.reason, findings);
  findings.throwIfAny();
  const whole = fields as Whole<ReturnType<typeof runShape>>;
  return {
    format: whole.format,
    id: whole.id,
    title: whole.title ?? null,
    protocol: whole.protocol,
    rig: whole.rig ?? null,
    constructions: whole.constructions ?? [],
    specification: whole.specification ?? null,
    specimens: whole.specimens ?? null,
    logs: whole.logs,
    amendments: whole.amendments ?? null,
    mountings: whole.mountings ?? null,
    checks: whole.checks ?? null,
    replaces: whole.replaces ?? null,
    inspections: whole.inspections ?? null,
    events: whole.events ?? null,
    request: requestOf(whole.request ?? {}),
    photos: whole.photos ?? [],
    source: document.source,
  };
}

/** A test may be repeated because of how it was done, never because of what it found. */
function checkRetest(reason: string | undefined, findings: Findings): void {
  if (reason === undefined) return;
  const entry = CATALOGUE.get(codeIn(reason) ?? '');
  if (entry?.excuses) return;
  const found = entry === undefined ? quote(reason) : `${entry.code} (${entry.title})`;
  const message = `found the reason ${found}, expected a code of the catalogue that does not depend on the result, such as DROP-20; "tirelab explain" lists them`;
  findings.add(['replaces', 'reason'], 'retest-by-result', message);
}

/** Path of a log or of a construction, however it is written. */
export function namedFile(entry: string | { readonly file: string }): string {
  return typeof entry === 'string' ? entry : entry.file;
}

function checkPaths(key: 'logs' | 'constructions', paths: readonly string[], findings: Findings): void {
  for (const [i, path] of paths.entries()) {
    if (paths.indexOf(path) < i) {
      const message = `found ${quote(path)} twice, expected each file once; remove one`;
      findings.add([key, i], 'duplicate-path', message);
    }
    if (path === '-') {
      const message = 'found "-", expected the path of a file; standard input is read with --protocol only';
      findings.add([key, i], 'bad-path', message);
    }
  }
}

/** Every item of a request by its key; null where it was left out. */
function requestOf(given: { readonly [Item in keyof RunRequest]?: string | undefined }): RunRequest {
  const items = Object.keys(requestShape()) as (keyof RunRequest)[];
  return Object.fromEntries(items.map((item) => [item, given[item] ?? null])) as unknown as RunRequest;
}
