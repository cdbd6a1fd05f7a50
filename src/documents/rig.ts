import { quote } from '../problem/echo.ts';
import { anything, block, list, optional } from './blocks.ts';
import { exportProfile, findOpenKeys } from './export.ts';
import { exportShape } from './export-shape.ts';
import { count, measure, name, prose, quantity, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Rig, RigConfiguration } from './kinds.ts';
import { once } from './once.ts';
import { type Fields, readEach, readFields, type Whole } from './read-fields.ts';
import {
  checkOrder,
  checkState,
  configurationOf,
  configurationShape,
  stateShape,
} from './rig-configurations.ts';
import { uncertaintyOf, uncertaintyShape } from './rig-uncertainty.ts';

/** The keys of a rig. */
export const rigShape = once(() => ({
  format: word(['tirelab.rig/1'], 'What this file is.'),
  id: name('Name of the rig.'),
  config: optional(name('Dated configuration: a change of mass, striker, base or gates is a new one.')),
  title: optional(prose('What the rig is, for people.')),
  ...stateShape(),
  configurations: optional(
    list(
      block(configurationShape(), 'How the rig stood for some time.'),
      'The configurations of the rig, the earliest first: each drop is of the one of its day, and no two are pooled.',
      1,
    ),
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
  drum: optional(
    block(
      {
        diameter: measure('m', 'Diameter of the drum over its surface.', { above: 0 }),
        cleats: optional(count('Cleats on its circumference; default none.', 0)),
        positions: optional(
          list(name('Name of a position.'), 'Places of tyres on the drum, where there are several.', 1),
        ),
      },
      'The drum of an endurance rig.',
    ),
  ),
  uncertainty: optional(
    list(
      block(uncertaintyShape(), 'One source of uncertainty.'),
      'What is known of the uncertainty of an energy, source by source (JCGM 100): carried in every result beside the scatter of the drops.',
      1,
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
  const shape = {
    ...rigShape(),
    configurations: optional(list(anything(), '', 1)),
    uncertainty: optional(list(anything(), '', 1)),
  };
  const fields = readFields(shape, document.value, [], findings);
  const configurations = configurationsOf(fields, findings);
  const latest = configurations.at(-1)!;
  const { site, gravity, limits } = fields;
  if (site !== undefined && gravity !== undefined) {
    const message = 'found both "site" and "gravity", expected one of them; keep the one you trust more';
    findings.add(['gravity'], 'one-of', message, 'key');
  }
  if (limits?.min !== undefined && limits.max !== undefined && limits.min >= limits.max) {
    const message = `found ${limits.max} mm, expected more than "min", ${limits.min} mm; correct one of them`;
    findings.add(['limits', 'max'], 'limits-not-ordered', message);
  }
  const { id } = fields;
  const called = [id, configurations.length > 1 ? null : latest.config]
    .filter((part) => part != null)
    .join('@');
  const profile = fields.export && exportProfile(fields.export, called, findings);
  const uncertainty = uncertaintyOf(findings);
  findings.throwIfAny();
  const whole = fields as Whole<typeof shape>;
  return {
    format: whole.format,
    id: whole.id,
    config: latest.config,
    configurations,
    title: whole.title ?? null,
    mass: latest.mass,
    provenMass: latest.provenMass,
    site: whole.site ?? null,
    gravity: whole.gravity ?? null,
    resolution: whole.resolution ?? null,
    limits: { min: limits?.min ?? null, max: limits?.max ?? null },
    drum: whole.drum
      ? {
          diameter: whole.drum.diameter,
          cleats: whole.drum.cleats ?? 0,
          positions: whole.drum.positions ?? [],
        }
      : null,
    uncertainty,
    export: profile ?? null,
    source: document.source,
  };
}

type RigFields = Fields<ReturnType<typeof rigShape>>;

/** The configurations of a rig: those listed, or the one that the file as a whole describes. */
function configurationsOf(
  fields: Omit<RigFields, 'configurations' | 'uncertainty'>,
  findings: Findings,
): RigConfiguration[] {
  checkState(fields, [], findings);
  const own = configurationOf(fields.config ?? null, fields);
  if (findings.valueAt(['configurations']) === undefined) return [own];
  const twice = (['config', ...Object.keys(stateShape())] as const).filter(
    (key) => findings.valueAt([key]) !== undefined,
  );
  for (const key of twice) {
    const message = `found ${quote(key)} beside "configurations", expected it in the configurations only; move it there`;
    findings.add([key], 'one-of', message, 'key');
  }
  const listed = readEach(configurationShape(), ['configurations'], findings).map(
    ({ path, fields: each }) => {
      checkState(each, path, findings);
      return configurationOf(each.config ?? null, each);
    },
  );
  checkOrder(listed, findings);
  return listed.length > 0 ? listed : [own];
}
