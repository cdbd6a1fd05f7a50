import { block, either, list, mapOf, optional } from './blocks.ts';
import { character, measure, name, prose, quantity, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Rig } from './kinds.ts';
import { once } from './once.ts';
import { readFields, type Whole } from './read-fields.ts';

const words = (description: string) =>
  either(name(description), list(name(description), description, 1), description);

const exportBlock = () =>
  block(
    {
      separator: optional(character('What stands between two cells, such as ";".')),
      decimal: optional(word(['.', ','], 'Decimal mark of the numbers.')),
      encoding: optional(name('Code page of the file, such as windows-1252.')),
      columns: optional(
        mapOf(
          name('Header of the column, as the rig writes it.'),
          'Which column of the export holds which quantity.',
        ),
      ),
      outcomes: optional(
        block(
          {
            failed: optional(words('What the rig writes for a failure.')),
            survived: optional(words('What the rig writes for a survival.')),
            'not-evaluable': optional(words('What the rig writes where the outcome could not be told.')),
          },
          "The rig's words for the outcome of a drop.",
        ),
      ),
    },
    "How the rig's export is written, where it is not the plain form.",
  );

/** The keys of a rig. */
export const rigShape = once(() => ({
  format: word(['tirelab.rig/1'], 'What this file is.'),
  id: name('Name of the rig.'),
  config: optional(name('Dated configuration: a change of mass, striker, base or gates is a new one.')),
  title: optional(prose('What the rig is, for people.')),
  mass: optional(
    quantity('kg', 'Falling mass: carriage, striker and all that falls with them.', {
      above: 0,
    }),
  ),
  site: optional(
    block(
      {
        latitude: measure('deg', 'Latitude, north positive.', { atLeast: -90, atMost: 90 }),
        altitude: measure('m', 'Height above sea level.', { atLeast: -500, atMost: 9000 }),
      },
      'Where the rig stands; local gravity follows from it.',
    ),
  ),
  gravity: optional(quantity('m/s2', 'Local gravity, where it was measured.', { above: 0 })),
  resolution: optional(measure('mm', 'Finest difference of height that the rig can set.', { above: 0 })),
  limits: optional(
    block(
      {
        min: optional(measure('mm', 'Lowest height.', { atLeast: 0 })),
        max: optional(measure('mm', 'Highest height.', { above: 0 })),
      },
      'Heights that the rig can reach.',
    ),
  ),
  export: optional(exportBlock()),
}));

/**
 * A rig from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function rig(document: YamlDocument): Rig {
  const findings = new Findings(document);
  const fields = readFields(rigShape(), document.value, [], findings);
  const { site, gravity, limits } = fields;
  if (site !== undefined && gravity !== undefined) {
    const message = 'found both "site" and "gravity", expected one of them; keep the one you trust more';
    findings.add(['gravity'], 'one-of', message, 'key');
  }
  if (limits?.min !== undefined && limits.max !== undefined && limits.min >= limits.max) {
    const message = `found ${limits.max} mm, expected more than "min", ${limits.min} mm; correct one of them`;
    findings.add(['limits', 'max'], 'limits-not-ordered', message);
  }
  findings.throwIfAny();
  const whole = fields as Whole<ReturnType<typeof rigShape>>;
  return {
    format: whole.format,
    id: whole.id,
    config: whole.config ?? null,
    title: whole.title ?? null,
    mass: whole.mass ?? null,
    site: whole.site ?? null,
    gravity: whole.gravity ?? null,
    resolution: whole.resolution ?? null,
    limits: { min: limits?.min ?? null, max: limits?.max ?? null },
    export: whole.export ?? null,
    source: document.source,
  };
}
