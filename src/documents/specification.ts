import { anything, block, list, mapOf, optional } from './blocks.ts';
import { criteriaOf, criterionShape, decisionShape } from './criteria.ts';
import { name, prose, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Specification } from './kinds.ts';
import { once } from './once.ts';
import { readFields, type Whole } from './read-fields.ts';

/** The keys of a specification. */
export const specificationShape = once(() => ({
  format: word(['tirelab.specification/1'], 'What this file is.'),
  id: name('Name of the specification.'),
  version: name('Version, as text: whatever moves a limit makes a new one.'),
  title: optional(prose('What the specification is for, for people.')),
  appliesTo: optional(
    mapOf(
      name('Value that the construction must have.'),
      'Which constructions it is for, by their keys, such as { category: trail }.',
    ),
  ),
  decision: optional(block(decisionShape(), 'How all criteria are decided that do not say otherwise.')),
  criteria: list(block(criterionShape(), 'One limit that a construction must meet.'), 'The limits.', 1),
}));

/**
 * A specification from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function specification(document: YamlDocument): Specification {
  const findings = new Findings(document);
  const shape = { ...specificationShape(), criteria: list(anything(), '', 1) };
  const fields = readFields(shape, document.value, [], findings);
  const { criteria, defaults } = criteriaOf(fields.decision ?? {}, findings);
  findings.throwIfAny();
  const { format, id, version, title, appliesTo } = fields as Whole<typeof shape>;
  return {
    format,
    id,
    version,
    title: title ?? null,
    appliesTo: appliesTo ?? {},
    criteria,
    defaults,
    source: document.source,
  };
}
