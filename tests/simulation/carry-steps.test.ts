import { describe, expect, it } from 'vitest';
import type { ImpactProtocol } from '../../src/documents/kinds.ts';
import { carryOut, emptyTrials } from '../../src/simulation/carry-out.ts';
import { carrying } from '../../src/simulation/carry-steps.ts';
import { ruleOf } from '../../src/simulation/design.ts';
import { levelTable } from '../../src/simulation/level-table.ts';
import { tyresOf } from '../../src/simulation/strength.ts';
import { randomStream } from '../../src/statistics/random/random-stream.ts';
import { designWith } from './designs.ts';

const SITES = { spacing: null, each: 'new-spot', avoid: [] } as const;
const CASES: readonly [string, Partial<ImpactProtocol>, string?][] = [
  ['plain', { stop: { drops: 30 } }],
  ['by a ratio', { stop: { drops: 30 }, step: { kind: 'ratio', ratio: 0.05 } }],
  ['at limits', { stop: { drops: 30 }, limits: { min: 560, max: 640 } }],
  ['until reversals', { stop: { reversals: 8 } }],
  ['until the rarer outcome', { stop: { drops: 20, rarer: 10 } }],
  ['several sites, retired', { stop: { specimens: 9 }, sites: { ...SITES, perSpecimen: 4 } }],
  [
    'several sites, gone on',
    { stop: { drops: 31 }, sites: { ...SITES, perSpecimen: 4 }, afterFailure: 'new-site' },
  ],
  [
    'one spot again and again',
    { stop: { specimens: 9 }, sites: { ...SITES, each: 'same-spot', perSpecimen: 1 } },
  ],
  ['several survivals', { stop: { drops: 40 }, method: 'transformed-up-and-down', survivalsToRaise: 3 }],
  ['rising', { stop: { specimens: 7 } }, 'pinch-rising-height'],
  ['rising to the top', { stop: { specimens: 7 }, limits: { min: null, max: 620 } }, 'pinch-rising-height'],
  ['rising for so many drops', { stop: { drops: 33 } }, 'pinch-rising-height'],
];

describe('carrying', () => {
  it.each(CASES)('makes the very drops that the rule asks for: %s', (_, changes, file) => {
    const design = designWith({ start: 580, step: { kind: 'additive', size: 25 }, ...changes }, file);
    const assumed = {
      law: 'normal',
      median: 600,
      spread: 30,
      between: 0.5,
      damage: 0.01,
      anyOffset: false,
    } as const;
    const tyres = tyresOf(assumed, null, 1, 0);
    const [one, two] = [emptyTrials(), emptyTrials()];
    const [levels, others] = [levelTable(1, 'identity'), levelTable(1, 'identity')];
    const carry = carrying(design);
    let drops = 0;
    for (let test = 0; test < 60; test++) {
      expect(carry(tyres, true, levels, randomStream(5, test), one)).toBe(true);
      expect(carryOut(ruleOf(design), tyres, true, others, randomStream(5, test), two)).toBe(true);
      expect(one.size).toBe(two.size);
      expect(one.specimens).toBe(two.specimens);
      for (let i = 0; i < one.size; i++) {
        const of = ({ level, failed, specimen }: typeof one, table: typeof levels) => [
          table.level[level[i]!],
          failed[i],
          specimen[i],
        ];
        expect(of(one, levels)).toEqual(of(two, others));
      }
      drops += one.size;
    }
    expect(drops).toBeGreaterThan(60 * 7);
  });
});
