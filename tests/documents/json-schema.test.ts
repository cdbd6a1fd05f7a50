import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { jsonSchema } from '../../src/documents/json-schema.ts';
import type { DocumentKind } from '../../src/documents/load.ts';
import { problemsOf } from './marked.ts';

const KINDS: DocumentKind[] = ['protocol', 'rig', 'construction', 'specification', 'run', 'waiver'];
const ajv = new Ajv({
  allErrors: true,
  strict: true,
  strictTypes: false,
  strictRequired: false,
  allowUnionTypes: true,
});
const validators = new Map(KINDS.map((kind) => [kind, ajv.compile(jsonSchema(kind))]));

/** As an editor does it: YAML 1.2 core, in which bare numbers are numbers. */
function isGoodInEditor(kind: DocumentKind, text: string): boolean {
  return validators.get(kind)!(parse(text)) as boolean;
}

const yamlIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => file.endsWith('.yaml') && !file.startsWith('hostile'))
    .map((file) => join(folder, file));
const files = ['protocols', 'shared', 'fixtures'].flatMap(yamlIn).map((path) => {
  const text = readFileSync(path, 'utf8');
  const kind = /^format: tirelab\.(\w+)\/1/m.exec(text)?.[1] as DocumentKind;
  return [kind, path, text] as const;
});

describe('the JSON Schema', () => {
  it.each(KINDS)('of a %s is the committed one (tirelab schema NAME writes it)', (kind) => {
    const committed = readFileSync(`protocols/schemas/${kind}.schema.json`, 'utf8');
    expect(committed).toBe(`${JSON.stringify(jsonSchema(kind), null, 2)}\n`);
  });

  it.each(KINDS)('of a %s is draft-07 and describes every key', (kind) => {
    const schema = jsonSchema(kind) as { $schema: string };
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    const silent: string[] = [];
    const walk = (part: unknown, path: string): void => {
      if (typeof part !== 'object' || part === null) return;
      for (const [key, inner] of Object.entries(part)) {
        if (key === 'properties' && 'additionalProperties' in part) {
          for (const [name, property] of Object.entries(inner as object)) {
            if (!(property as { description?: string }).description) silent.push(`${path}/${name}`);
          }
        }
        walk(inner, `${path}/${key}`);
      }
    };
    walk(schema, '');
    expect(silent).toEqual([]);
  });

  it.each(files)('accepts %s %s, as the program does', (kind, _path, text) => {
    const validate = validators.get(kind)!;
    expect(validate(parse(text)), JSON.stringify(validate.errors, null, 1)).toBe(true);
    expect(problemsOf(kind, text)).toEqual([]);
  });

  const P = 'format: tirelab.protocol/1\nid: p\nversion: 1.10\nkind: impact\n';
  const UP = `${P}method: up-and-down\nstart: 500 mm\nstep: 25 mm\n`;
  const FIXED = `${P}method: fixed-level\nlevels: [400 mm]\n`;
  const D = 'format: tirelab.protocol/1\nid: d\nversion: 1\nkind: endurance\n';
  const S = 'format: tirelab.specification/1\nid: s\nversion: 1\ncriteria:\n  - ';
  const MEDIAN = '{ id: m, protocol: p@1, quantity: medianFailureEnergy, atLeast: 45 J }';

  it.each<[DocumentKind, string]>([
    ['protocol', UP],
    ['protocol', FIXED],
    ['protocol', UP.replace('25 mm', '5 %')],
    ['protocol', `${UP}id2: x\n`.replace('id2: x\n', 'pressure: { "62-622": 1.6 bar +- 0.1 bar }\n')],
    ['protocol', `${UP}temperature: 23 °C ± 2 K\nstop: { drops: 30 }\n`],
    ['specification', `${S}${MEDIAN}`],
    ['specification', `${S}{ id: w, protocol: d@1, quantity: weibullShape, atLeast: 1.5 }`],
    ['specification', `${S}{ id: b, external: accredited }`],
    ['rig', 'format: tirelab.rig/1\nid: 412\nconfig: 2026\n'],
    ['run', 'format: tirelab.run/1\nid: 1\nprotocol: p.yaml\nlogs: [1]\n'],
    [
      'construction',
      'format: tirelab.construction/1\nid: 1\nrevision: 1\nfactors: { a: { b: 1, c: [x] } }\n',
    ],
  ])('and the program both accept: %s %#', (kind, text) => {
    expect(problemsOf(kind, text)).toEqual([]);
    expect(isGoodInEditor(kind, text)).toBe(true);
  });

  it.each<[DocumentKind, string]>([
    ['protocol', `${UP}stpe: 1 mm\n`],
    ['protocol', UP.replace('500 mm', '500')],
    ['protocol', UP.replace('500 mm', '500 kg')],
    ['protocol', UP.replace('500 mm', '500 mm ± 1 mm')],
    ['protocol', UP.replace('up-and-down', 'up-and-dwn')],
    ['protocol', UP.replace('impact', 'imapct')],
    ['protocol', UP.replace('id: p\n', '')],
    ['protocol', UP.replace('start: 500 mm\n', '')],
    ['protocol', `${UP}levels: [400 mm]\n`],
    ['protocol', `${FIXED}start: 400 mm\n`],
    ['protocol', `${FIXED}perLevel: 0\n`],
    ['protocol', FIXED.replace('[400 mm]', '[]')],
    ['protocol', `${UP}stop: {}\n`],
    ['protocol', `${UP}stop: { rarer: 3 }\n`],
    ['protocol', `${UP}stop: { drops: 3, atMost: 3 }\n`],
    ['protocol', `${UP}stop: { drops: 3.5 }\n`],
    ['protocol', `${UP}stop: 30\n`],
    ['protocol', `${UP}confidence: 0.95\n`],
    ['protocol', `${UP}pressure: 2 bar ± 5 mm\n`],
    ['protocol', `${UP}sites: { avoid: [0 deg] }\n`],
    ['protocol', `${D}schedule: []\n`],
    ['protocol', `${D}schedule: [{ block: a, speed: 30 km/h, load: 650 N }]\n`],
    [
      'protocol',
      `${D}schedule: [{ block: a, distance: 1 km, duration: 1 h, speed: 30 km/h, load: 650 N }]\n`,
    ],
    ['protocol', `${D}schedule: [{ block: a, distance: 1 km, speed: 30 km/h }]\n`],
    ['specification', `${S}${MEDIAN.replace('45 J', '45')}`],
    ['specification', `${S}${MEDIAN.replace('45 J', '45 mm')}`],
    ['specification', `${S}${MEDIAN.replace(' }', ', atMost: 50 J }')}`],
    ['specification', `${S}${MEDIAN.replace('medianFailureEnergy', 'medianEnergy')}`],
    ['specification', `${S}${MEDIAN.replace('medianFailureEnergy', 'failureEnergyQuantile')}`],
    ['specification', `${S}${MEDIAN.replace(' }', ', probability: 10 % }')}`],
    ['specification', `${S}${MEDIAN.replace('protocol: p@1, ', '')}`],
    ['specification', `${S}{ id: m, quantity: mass, within: 900 g }`],
    ['specification', `${S}{ id: m, quantity: mass, protocol: p@1, atMost: 900 g }`],
    ['rig', 'format: tirelab.rig/1\nid: r\nsite: { latitude: 51 deg, altitude: 0 m }\ngravity: 9.81 m/s2\n'],
    ['rig', 'format: tirelab.rig/1\nid: r\nsite: { latitude: 51 deg }\n'],
    ['rig', 'format: tirelab.rig/1\nid: r\nexport: { seperator: ";" }\n'],
    ['construction', 'format: tirelab.construction/1\nid: c\n'],
    ['run', 'format: tirelab.run/1\nid: r\nprotocol: p.yaml\nlogs: a.csv\n'],
    ['run', 'format: tirelab.run/1\nid: r\nprotocol: p.yaml\nlogs: []\n'],
    ['run', 'format: tirelab.run/2\nid: r\nprotocol: p.yaml\nlogs: [a.csv]\n'],
  ])('and the program both refuse: %s %#', (kind, text) => {
    const isRefused = (): boolean => problemsOf(kind, text).length > 0;
    expect(isRefused()).toBe(true);
    expect(isGoodInEditor(kind, text)).toBe(false);
  });
});
