import { anything, block, list, optional } from './blocks.ts';
import { measure, name, prose, quantity, share, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import { LAWS } from './impact-fields.ts';
import type { EnduranceBlock, EnduranceProtocol } from './kinds.ts';
import { once } from './once.ts';
import { readEach, readFields, type Whole } from './read-fields.ts';
import type { Path } from './yaml-value.ts';

const blockShape = once(() => ({
  block: name('Name of the block.'),
  distance: optional(measure('km', 'Distance to run.', { above: 0 })),
  duration: optional(measure('s', 'Time to run, where no distance is given.', { above: 0 })),
  speed: quantity('km/h', 'Speed at the drum surface, with its tolerance.', { atLeast: 0 }),
  load: quantity('N', 'Radial load, with its tolerance.', { atLeast: 0 }),
  pressure: optional(quantity('bar', 'Tyre pressure, with its tolerance.', { atLeast: 0 })),
  temperature: optional(quantity('°C', 'Ambient temperature, with its tolerance in K.')),
}));

/** The keys of an endurance protocol. */
export const enduranceShape = once(() => ({
  format: word(['tirelab.protocol/1'], 'What this file is.'),
  kind: word(['endurance'], 'A drum test; "impact" is a drop test.'),
  id: name('Name of the protocol; results and specifications refer to it.'),
  version: name('Version of the protocol, as text: a change of the schedule is a new one.'),
  title: optional(prose('What the protocol is, for people.')),
  schedule: list(
    block(blockShape(), 'One stretch at set load, speed and pressure: either a distance or a duration.'),
    'The blocks of the test in their order.',
    1,
  ),
  wearLimit: optional(measure('mm', 'Tread depth at which a tyre is worn out.', { atLeast: 0 })),
  sampling: optional(measure('Hz', 'How often the rig logs.', { above: 0 })),
  distribution: optional(word(LAWS, 'Law of the life of the tyres; default weibull.')),
  confidence: optional(share('Confidence of intervals and bounds, such as 95 %.', 0.5, 1)),
}));

/**
 * The protocol of a drum test from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function enduranceProtocol(document: YamlDocument): EnduranceProtocol {
  const findings = new Findings(document);
  const shape = { ...enduranceShape(), schedule: list(anything(), '', 1) };
  const fields = readFields(shape, document.value, [], findings);
  const blocks = readEach(blockShape(), ['schedule'], findings);
  checkBlocks(blocks, findings);
  findings.throwIfAny();
  const { format, kind, id, version, title, wearLimit, sampling, distribution, confidence } = fields as Whole<
    typeof shape
  >;
  return {
    format,
    kind,
    id,
    version,
    title: title ?? null,
    schedule: blocks.map((block) => buildBlock(block.fields as WholeBlock)),
    wearLimit: wearLimit ?? null,
    sampling: sampling ?? null,
    distribution: distribution ?? 'weibull',
    confidence: confidence ?? 0.95,
    defaults: [
      ...(distribution === undefined ? ['distribution: Weibull life'] : []),
      ...(confidence === undefined ? ['confidence: 95 %, two-sided intervals and one-sided bounds'] : []),
    ],
    source: document.source,
  };
}

type WholeBlock = Whole<ReturnType<typeof blockShape>>;

function buildBlock(fields: WholeBlock): EnduranceBlock {
  return {
    block: fields.block,
    distance: fields.distance ?? null,
    duration: fields.duration ?? null,
    speed: fields.speed,
    load: fields.load,
    pressure: fields.pressure ?? null,
    temperature: fields.temperature ?? null,
  };
}

function checkBlocks(
  blocks: readonly { readonly path: Path; readonly fields: { readonly block?: string | undefined } }[],
  findings: Findings,
): void {
  const seen = new Set<string>();
  for (const { path, fields } of blocks) {
    const id = fields.block;
    const lengths = ['distance', 'duration'].filter((key) => findings.valueAt([...path, key]) !== undefined);
    if (lengths.length !== 1) {
      const found =
        lengths.length === 0 ? 'neither "distance" nor "duration"' : 'both "distance" and "duration"';
      findings.add(
        path,
        'one-of',
        `found ${found} in the block, expected one of the two; give the one that ends it`,
      );
    }
    if (id === undefined) continue;
    if (seen.has(id))
      findings.add(
        [...path, 'block'],
        'duplicate-id',
        `found the block "${id}" twice, expected names that differ; rename one`,
      );
    seen.add(id);
  }
}
