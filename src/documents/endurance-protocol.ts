import { anything, block, list, optional } from './blocks.ts';
import { count, flag, measure, name, number, prose, quantity, share, word } from './fields.ts';
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
  revolutions: optional(
    count(
      "Revolutions of the drum to run, where no distance is given: the rig's drum makes a distance of them.",
    ),
  ),
  ramp: optional(
    measure('s', 'Time at the begin of the block in which speed and load may still be on their way.', {
      above: 0,
    }),
  ),
  cleats: optional(flag('Whether cleats are on the drum in this block.')),
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
    block(blockShape(), 'One stretch at set load, speed and pressure: by distance, duration or revolutions.'),
    'The blocks of the test in their order.',
    1,
  ),
  wearLimit: optional(measure('mm', 'Tread depth at which a tyre is worn out.', { atLeast: 0 })),
  inspections: optional(
    block(
      {
        at: optional(
          list(measure('km', 'Distance at which the tyre is looked at.', { above: 0 }), 'Distances.', 1),
        ),
        every: optional(measure('km', 'Distance from look to look.', { atLeast: 1 })),
      },
      'When the tyres are looked at, beside the end.',
    ),
  ),
  pauses: optional(
    block(
      {
        allowed: count('Pauses that the test may have.', 0),
        from: measure('s', 'Standing still for less is no pause, such as 1 h.', { above: 0 }),
      },
      'How often the test may stand still: more pauses are a deviation (DRUM-17).',
    ),
  ),
  pressureRule: optional(
    word(
      ['capped', 'held'],
      'capped: set cold, the valve then closed and nothing corrected; held: corrected while the test runs.',
    ),
  ),
  stop: optional(
    block(
      {
        pressureBelow: optional(measure('bar', 'Tyre pressure.', { atLeast: 0 })),
        loadBelow: optional(measure('N', 'Load while the drum turns.', { atLeast: 0 })),
        tyreAbove: optional(measure('°C', 'Temperature of the tyre.')),
      },
      'What ends the test beside its schedule: the trips of the rig.',
    ),
  ),
  equivalence: optional(
    block(
      {
        load: measure('N', 'Load that the distances of all blocks are referred to.', { above: 0 }),
        exponent: number(
          'Exponent of the inverse power law of life and load: an input, no constant of nature.',
          {
            above: 0,
          },
        ),
        uncertainty: optional(number('Standard uncertainty of the exponent.', { above: 0 })),
        degrees: optional(number('Its degrees of freedom; default without bound.', { above: 0 })),
      },
      'Says what was run as the distance at one load that would do as much. Never a distance on a road.',
    ),
  ),
  pressureAt: optional(
    measure(
      '°C',
      'Temperature to which the mean pressures of the blocks are referred, by the law of gases.',
      {
        above: -273.15,
      },
    ),
  ),
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
  const whole = fields as Whole<typeof shape>;
  const { format, kind, id, version, title, wearLimit, sampling, distribution, confidence } = whole;
  const { inspections, pauses, pressureRule, stop } = whole;
  return {
    format,
    kind,
    id,
    version,
    title: title ?? null,
    schedule: blocks.map((block) => buildBlock(block.fields as WholeBlock)),
    wearLimit: wearLimit ?? null,
    inspections: inspections ? { at: inspections.at ?? [], every: inspections.every ?? null } : null,
    pauses: pauses ?? null,
    pressureRule: pressureRule ?? null,
    stop: stop
      ? {
          pressureBelow: stop.pressureBelow ?? null,
          loadBelow: stop.loadBelow ?? null,
          tyreAbove: stop.tyreAbove ?? null,
        }
      : null,
    equivalence: whole.equivalence
      ? {
          load: whole.equivalence.load,
          exponent: whole.equivalence.exponent,
          uncertainty: whole.equivalence.uncertainty ?? null,
          degrees: whole.equivalence.degrees ?? null,
        }
      : null,
    pressureAt: whole.pressureAt ?? null,
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
    revolutions: fields.revolutions ?? null,
    ramp: fields.ramp ?? null,
    cleats: fields.cleats ?? null,
  };
}

const LENGTHS = ['distance', 'duration', 'revolutions'] as const;

function checkBlocks(
  blocks: readonly { readonly path: Path; readonly fields: { readonly block?: string | undefined } }[],
  findings: Findings,
): void {
  const seen = new Set<string>();
  for (const { path, fields } of blocks) {
    const id = fields.block;
    const lengths = LENGTHS.filter((key) => findings.valueAt([...path, key]) !== undefined);
    if (lengths.length !== 1) {
      const found = lengths.length === 0 ? 'nothing' : lengths.map((key) => `"${key}"`).join(' and ');
      findings.add(
        path,
        'one-of',
        `found ${found} that ends the block, expected one of "distance", "duration" and "revolutions"; give the one that ends it`,
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
