import * as z from 'zod/mini';
import { constructionShape } from './construction.ts';
import { criterionRules } from './criterion-rules.ts';
import { enduranceShape } from './endurance-protocol.ts';
import { type Json, noteOf } from './hover.ts';
import { impactShape } from './impact-fields.ts';
import { inside, is, needs, when, without } from './json-keywords.ts';
import type { DocumentKind } from './load.ts';
import { METHOD_KEYS } from './method-keys.ts';
import { eitherPattern, quantityPattern } from './pattern.ts';
import type { Shape } from './read-fields.ts';
import { rigShape } from './rig.ts';
import { runShape } from './run.ts';
import { specificationShape } from './specification.ts';
import { waiverShape } from './waiver.ts';

const DRAFT = 'http://json-schema.org/draft-07/schema#';

/**
 * The JSON Schema (draft-07, which editors read) of a kind of document, for completion, hover text and checks while
 * typing. It says what the schemas of the kind say, and of the rules between keys those that JSON Schema can
 * express; an editor gives scalars a type, so a count or a version may be a number here.
 */
export function jsonSchema(kind: DocumentKind): Json {
  return { $schema: DRAFT, ...KINDS[kind]() };
}

const KINDS: Readonly<Record<DocumentKind, () => Json>> = {
  protocol: () => ({
    title: 'tirelab protocol: how a test is done',
    // The kind is told apart first, so that an editor complains of the keys of one kind, not of two.
    ...when(is('kind', 'endurance'), { $ref: '#/definitions/endurance' }, { $ref: '#/definitions/impact' }),
    definitions: {
      impact: { ...ofShape(impactShape(), 'Drop test'), allOf: impactRules() },
      endurance: withBlocks(ofShape(enduranceShape(), 'Drum test')),
    },
  }),
  rig: () => ofShape(rigShape(), 'tirelab rig: the apparatus', { not: { required: ['site', 'gravity'] } }),
  construction: () => ofShape(constructionShape(), 'tirelab construction: what is compared'),
  specification: () =>
    withCriteria(
      ofShape(specificationShape(), 'tirelab specification: limits that a construction must meet'),
    ),
  run: () => ofShape(runShape(), 'tirelab run: one carrying-out of a protocol'),
  waiver: () =>
    ofShape(waiverShape(), 'tirelab waiver: a criterion that a construction need not meet, until a day'),
};

function ofShape(shape: Shape, title: string, rules: Json = {}): Json {
  const { $schema: _, ...schema } = z.toJSONSchema(z.strictObject(shape), {
    target: 'draft-7',
    io: 'input',
    override: ({ zodSchema, jsonSchema: part }) => {
      Object.assign(part, noteOf(zodSchema));
    },
  });
  return { title, ...schema, ...rules };
}

function impactRules(): Json[] {
  return [
    ...Object.entries(METHOD_KEYS).map(([method, { needed, foreign }]) =>
      when(is('method', method), { ...needs(...needed), ...without(foreign) }),
    ),
    when(
      is('vary', 'mass'),
      { ...needs('height'), properties: { mass: false, ...levelsIn('kg') } },
      { properties: { height: false, ...levelsIn('mm') } },
    ),
  ];
}

/** The keys whose unit goes by what is varied. */
function levelsIn(unit: 'mm' | 'kg'): Readonly<Record<string, Json>> {
  const pattern = quantityPattern(unit, 'none');
  const ends = { min: { pattern }, max: { pattern } };
  return {
    start: { pattern },
    step: { pattern: eitherPattern(pattern, quantityPattern('1', 'none')) },
    levels: { items: { pattern } },
    limits: { properties: ends },
    guess: { properties: { lowest: { pattern }, highest: { pattern }, spread: { pattern } } },
  };
}

/** A block ends by its distance or by its duration. */
function withBlocks(schema: Json): Json {
  return inside(schema, ['properties', 'schedule', 'items'], {
    oneOf: [needs('distance'), needs('duration')],
  });
}

function withCriteria(schema: Json): Json {
  return inside(schema, ['properties', 'criteria', 'items'], { allOf: criterionRules() });
}
