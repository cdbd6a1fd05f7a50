import { describe, expect, it } from 'vitest';
import { doubtsOf } from '../../src/documents/plausible.ts';
import { read } from './marked.ts';

// Ranges of tyres as they are sold: common practice, no source. Hookless rims carry 5 bar: ETRTO, as the trade press
// reports it; from memory.

const HEAD = 'format: tirelab.construction/1\nid: C\nrevision: "1"\n';

function doubts(body: string) {
  const { impossible, unusual } = doubtsOf(read('construction', HEAD + body));
  const places = (all: typeof impossible) => all.map(({ line, column }) => `${line}:${column}`);
  return { impossible: places(impossible), unusual: places(unusual) };
}

describe('the physics of a construction', () => {
  it.each([
    'size: "25-622"\nfactors: { mass: 180 g, casing: { plies: 2, tpi: 320 }, pressure: { min: 4 bar, max: 7 bar } }\n',
    'size: "62-622"\nfactors: { mass: 905 g, width: 61.5 mm, casing: { plies: 2, tpi: 60 }, maxPressure: 50 psi }\n',
    'size: "47-507"\nfactors: { mass: 1.2 kg, rim: hookless, maxPressure: 5 bar }\n',
    'factors: { mass: light, colour: 9000 g of dye, other: { mass: 3 m } }\n',
    'factors: { width: to the drawing }\n',
    '',
  ])('has nothing against %j', (body) => {
    expect(doubts(body)).toEqual({ impossible: [], unusual: [] });
  });

  it.each([
    ['a mass of nothing', 'factors: { mass: 0 g }\n', '4:18'],
    ['a negative width', 'factors: { width: -60 mm }\n', '4:19'],
    ['a mass in millimetres', 'factors: { mass: 905 mm }\n', '4:18'],
    ['no ply', 'factors: { casing: { plies: 0 } }\n', '4:29'],
    ['a least pressure above the greatest', 'factors: { pressure: { min: 4 bar, max: 3 bar } }\n', '4:29'],
    ['too much for a rim without hooks', 'factors: { rim: hookless, maxPressure: 5.5 bar }\n', '4:40'],
  ])('refuses %s, at its place', (_name, body, place) => {
    expect(doubts(body)).toEqual({ impossible: [place], unusual: [] });
  });

  it.each([
    ['a light tyre', 'factors: { mass: 90 g }\n', '4:18'],
    ['a mass without a unit', 'factors: { mass: 905 }\n', '4:18'],
    ['a decimal comma', 'factors: { width: "61,5 mm" }\n', '4:19'],
    ['a bead seat that no tyre has', 'size: "62-623"\n', '4:7'],
    ['a width beside its designation', 'size: "62-622"\nfactors: { width: 40 mm }\n', '5:19'],
  ])('doubts %s, at its place', (_name, body, place) => {
    expect(doubts(body)).toEqual({ impossible: [], unusual: [place] });
  });
});
