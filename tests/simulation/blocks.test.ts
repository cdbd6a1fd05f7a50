import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/problem/problem.ts';
import { simulateBlock } from '../../src/simulation/block.ts';
import { blockTasks, refuseEndless, runInline } from '../../src/simulation/blocks.ts';
import { designWith, staircase } from './designs.ts';

const ERRORS = { withIntervals: false, specimenEffect: false };

describe('blocks of simulated tests', () => {
  it('draw by the number of the test: however they are cut, test k is the same', () => {
    const { design, assumed } = staircase({ drops: 20 }, 1, 0);
    const [whole] = blockTasks(design, assumed, { tests: 60, seed: 9, wanted: ERRORS });
    const all = simulateBlock(whole!);
    const late = simulateBlock({ ...whole!, first: 40, tests: 20 });
    expect([...late.errors[0]!]).toEqual([...all.errors[0]!.slice(40)]);
    const other = simulateBlock({ ...whole!, seed: 10 });
    expect([...other.errors[0]!]).not.toEqual([...all.errors[0]!]);
  });

  it('count every test once and say how many are done', async () => {
    const { design, assumed } = staircase({ drops: 5 }, 1, 0);
    const done: number[] = [];
    const tasks = blockTasks(design, assumed, { tests: 2500, seed: 1, wanted: ERRORS });
    const blocks = await runInline(tasks, (tests) => done.push(tests));
    expect(done).toEqual([1000, 1000, 500]);
    expect(blocks.map(({ tests }) => tests)).toEqual(done);
  });

  it('refuse a stop rule that is never reached: no reversal comes where every tyre survives the highest level', async () => {
    const design = designWith({ start: 300, limits: { min: 100, max: 400 }, stop: { reversals: 4 } });
    const assumed = {
      law: 'normal',
      median: 1000,
      spread: 1,
      between: 0,
      damage: 0,
      anyOffset: false,
    } as const;
    const blocks = await runInline(
      blockTasks(design, assumed, { tests: 2, seed: 1, wanted: ERRORS }),
      () => {},
    );
    expect(blocks[0]!.endless).toBe(2);
    expect(() => refuseEndless(design, blocks)).toThrow(InputError);
    expect(() => refuseEndless(design, blocks)).toThrow(
      /2 of 2 simulated tests did not reach within 10000 drops/u,
    );
  });
});
