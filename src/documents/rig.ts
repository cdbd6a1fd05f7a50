import { block, optional } from './blocks.ts';
import { exportProfile, findOpenKeys } from './export.ts';
import { exportShape } from './export-shape.ts';
import { measure, name, prose, quantity, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Rig } from './kinds.ts';
import { once } from './once.ts';
import { readFields, type Whole } from './read-fields.ts';

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
  export: optional(block(exportShape(), "How the rig's export is written, where it is not the plain form.")),
}));

/**
 * A rig from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function rig(document: YamlDocument): Rig {
  const findings = new Findings(document);
  if (findOpenKeys(findings)) findings.throwIfAny();
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
  const called = [fields.id, fields.config].filter((part) => part !== undefined).join('@');
  const profile = fields.export && exportProfile(fields.export, called, findings);
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
    export: profile ?? null,
    source: document.source,
  };
}
