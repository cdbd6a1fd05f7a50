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
