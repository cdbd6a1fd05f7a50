import { quote } from '../problem/echo.ts';
import { anything, list, mapOf, optional } from './blocks.ts';
import { name, pin, prose, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Construction } from './kinds.ts';
import { once } from './once.ts';
import { readFields, type Whole } from './read-fields.ts';
import type { Path, Yaml } from './yaml-value.ts';

/** The keys of a construction. */
export const constructionShape = once(() => ({
  format: word(['tirelab.construction/1'], 'What this file is.'),
  id: name('Code of the construction.'),
  revision: name('Revision, as text: whatever changes the tyre makes a new one.'),
  title: optional(prose('What the construction is, for people.')),
  status: optional(
    word(
      ['draft', 'prototype', 'released', 'withdrawn'],
      'How far it has come. A released revision is never changed, and a withdrawn one no longer judged.',
    ),
  ),
  category: optional(name('What the tyre is for, such as trail or city.')),
  size: optional(name('Size designation, such as "62-622".')),
  parent: optional(pin('What it was made from, as id@revision.')),
  declared: optional(
    list(name('Dotted path of a factor.'), 'The factors in which it is meant to differ from its parent.'),
  ),
  consequences: optional(
    list(
      name('Dotted path of a factor.'),
      'The factors that differ because of the declared ones, such as the mass: listed by the engineer, never assumed.',
    ),
  ),
  factors: optional(
    mapOf(anything(), 'Everything that makes up the tyre: nested maps of values, as the lab names them.'),
  ),
}));

/**
 * A construction from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function construction(document: YamlDocument): Construction {
  const findings = new Findings(document);
  const fields = readFields(constructionShape(), document.value, [], findings);
  const { parent } = fields;
  if (
    parent &&
    (parent.version === null || (parent.id === fields.id && parent.version === fields.revision))
  ) {
    const found = parent.version === null ? 'without a revision' : 'which is this construction itself';
    const written = quote(String(document.value.parent));
    findings.add(['parent'], 'bad-parent', `found ${written}, ${found}; expected another one as id@revision`);
  }
  const factors: Record<string, string> = Object.create(null);
  collect(document.value.factors ?? {}, ['factors'], factors, findings);
  findings.throwIfAny();
  const { format, id, revision, title, status, category, size, declared, consequences } = fields as Whole<
    ReturnType<typeof constructionShape>
  >;
  return {
    format,
    id,
    revision,
    title: title ?? null,
    status: status ?? null,
    category: category ?? null,
    size: size ?? null,
    parent: parent ? `${parent.id}@${parent.version}` : null,
    declared: declared ?? [],
    consequences: consequences ?? [],
    factors,
    source: document.source,
  };
}

/** Every leaf by its dotted path: `casing.tpi`; the entries of a list by their number, from nought. */
function collect(value: Yaml, path: Path, into: Record<string, string>, findings: Findings): void {
  if (typeof value === 'string') {
    const key = path.slice(1).join('.');
    if (key in into) {
      const message = `found the factor ${quote(key)} twice, expected it once; a dot in a key reads as a level`;
      findings.add(path, 'duplicate-key', message, 'key');
    }
    if (key !== '') into[key] = value;
    return;
  }
  for (const [key, inner] of Object.entries(value)) {
    collect(inner, [...path, Array.isArray(value) ? Number(key) : key], into, findings);
  }
}
