import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { marked, problemsOf, read } from './marked.ts';

const RIG = 'format: tirelab.rig/1\nid: drop-2\nconfig: 2026-03\nmass: 8.000 kg\n';

describe('a rig', () => {
  it('is read with its units', () => {
    const text = `${RIG}site: { latitude: 51.0 deg, altitude: 0.3 km }
resolution: 1 mm
limits: { max: 1.25 m }
export: { separator: ";", decimal: ",", encoding: windows-1252, columns: { height: "Hoehe [mm]" }, outcomes: { failed: ["x"], survived: o } }
`;
    expect(read('rig', text)).toMatchObject({
      id: 'drop-2',
      config: '2026-03',
      mass: { value: 8, tolerance: null },
      site: { latitude: expect.closeTo(51, 10), altitude: 300 },
      gravity: null,
      resolution: 1,
      limits: { min: null, max: 1250 },
      export: {
        rig: 'drop-2@2026-03',
        dialect: { separator: ';', decimal: ',', thousands: null, encoding: 'windows-1252' },
        columns: new Map([['height', expect.objectContaining({ name: 'Hoehe [mm]', unit: null })]]),
        outcomes: new Map([
          ['x', 'failed'],
          ['o', 'survived'],
          ['failed', 'failed'],
          ['survived', 'survived'],
          ['not-evaluable', 'not-evaluable'],
        ]),
      },
    });
    expect(read('rig', 'format: tirelab.rig/1\nid: 0412\n')).toMatchObject({ id: '0412', export: null });
  });
});

const DATED = `format: tirelab.rig/1
id: drop-2
configurations:
  - { config: a, to: 2026-03-08, mass: 8.000 kg, striker: bar of 10 mm }
  - { config: b, from: 2026-03-09, mass: 8.000 kg, provenMass: { mass: 8.040 kg, by: W-17, on: 2026-04-02 } }
`;

describe('a rig with dated configurations', () => {
  it('has the mass and name of the latest, and all of them', () => {
    expect(read('rig', DATED)).toMatchObject({
      config: 'b',
      mass: { value: 8 },
      provenMass: { mass: { value: 8.04 }, by: 'W-17', on: '2026-04-02' },
      configurations: [
        { config: 'a', from: null, to: '2026-03-08', provenMass: null, striker: 'bar of 10 mm' },
        { config: 'b', from: '2026-03-09', to: null, striker: null },
      ],
    });
  });

  it('is one configuration where it has none', () => {
    expect(read('rig', `${RIG}from: 2026-03-01\n`).configurations).toMatchObject([
      { config: '2026-03', from: '2026-03-01', to: null, mass: { value: 8 } },
    ]);
  });

  it.each<[string, string, string[]]>([
    ['configurations and a mass beside them', `${DATED}▶mass: 8 kg\n`, ['one-of']],
    ['a day of both', DATED.replace('from: 2026-03-09', 'from: ▶2026-03-08'), ['two-ways']],
    ['no first day', DATED.replace('{ config: b, from: 2026-03-09,', '▶{ config: b,'), ['missing-key']],
    ['one name twice', DATED.replace('config: b', 'config: ▶a'), ['duplicate-id']],
    ['a day that is none', DATED.replace('2026-03-09', '▶2026-02-30'), ['bad-value']],
    ['an end before the beginning', `${RIG}from: 2026-03-09\nto: ▶2026-03-08\n`, ['dates-not-ordered']],
    ['a proven mass off by more than 1 %', DATED.replace('8.040 kg', '▶8.081 kg'), ['mass-too-far']],
    [
      'a proven mass and none that it corrects',
      'format: tirelab.rig/1\nid: a\n▶provenMass: { mass: 8 kg, by: W-17, on: 2026-04-02 }\n',
      ['missing-key'],
    ],
  ])('is refused with %s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('rig', clean)).toEqual(expected);
  });
});

describe('what is wrong with a rig', () => {
  it.each<[string, string, string[]]>([
    [
      'a site without its altitude',
      `${RIG}▶site: { latitude: 51 deg }\n`.replace('▶site: ', 'site: ▶'),
      ['missing-key'],
    ],
    ['a latitude beyond the pole', `${RIG}site: { latitude: ▶91 deg, altitude: 0 m }\n`, ['bad-quantity']],
    ['an altitude in degrees', `${RIG}site: { latitude: 51 deg, altitude: ▶3 deg }\n`, ['bad-quantity']],
    [
      'site and gravity',
      `${RIG}site: { latitude: 51 deg, altitude: 0 m }\n▶gravity: 9.81 m/s2\n`,
      ['one-of'],
    ],
    ['limits that cross', `${RIG}limits: { min: 500 mm, max: ▶400 mm }\n`, ['limits-not-ordered']],
    ['a separator of two characters', `${RIG}export: { separator: ▶";;" }\n`, ['bad-value']],
    ['a decimal mark that is none', `${RIG}export: { decimal: ▶; }\n`, ['unknown-word']],
    ['an outcome that is none', `${RIG}export: { outcomes: { ▶faild: [x] } }\n`, ['unknown-key']],
    ['an unknown key of the export', `${RIG}export: { ▶seperator: ";" }\n`, ['unknown-key']],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('rig', clean)).toEqual(expected);
  });
});

describe('the rigs that the README shows', () => {
  const blocks = [...readFileSync('README.md', 'utf8').matchAll(/```yaml\n([\s\S]*?)```/gu)].map(
    ([, text]) => text!,
  );

  it('are rigs', () => {
    const whole = blocks.filter((text) => text.startsWith('format: tirelab.rig/1'));
    const part = blocks.filter((text) => text.startsWith('configurations:'));
    expect([whole.length, part.length]).toEqual([1, 1]);
    expect(read('rig', whole[0]!).export!.columns.size).toBe(7);
    expect(read('rig', `format: tirelab.rig/1\nid: r\n${part[0]}`).configurations).toHaveLength(2);
  });
});
