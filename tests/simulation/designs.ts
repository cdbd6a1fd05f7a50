import type { ImpactProtocol, Stop } from '../../src/documents/kinds.ts';
import { loadProtocol } from '../../src/documents/load.ts';
import type { SimulatedPoint } from '../../src/result/simulation.ts';
import type { Block } from '../../src/simulation/block.ts';
import { blockTasks, runInline } from '../../src/simulation/blocks.ts';
import type { Design } from '../../src/simulation/design.ts';
import { estimatorsFor, WHOLE } from '../../src/simulation/estimators.ts';
import { type AssumedStrength, tyresOf } from '../../src/simulation/strength.ts';
import { summarise } from '../../src/simulation/summary.ts';
import { normal } from '../../src/statistics/laws/normal.ts';

/** A ready protocol with other numbers; 1 J for 1 mm, so that heights and energies are the same number. */
export function designWith(changes: Partial<ImpactProtocol>, file = 'pinch-up-down'): Design {
  const protocol = loadProtocol({ path: `protocols/${file}.yaml` });
  if (protocol.kind !== 'impact') throw new Error('a drop test is wanted');
  return {
    protocol: { ...protocol, limits: { min: null, max: null }, ...changes },
    rig: null,
    specification: null,
    energyPerLevel: 1,
  };
}

/** Up-and-down tests on tyres of spread 1, the offset of the grid of levels random. */
export function staircase(
  stop: Stop,
  step: number,
  startOff: number,
): { design: Design; assumed: AssumedStrength } {
  const median = 1000;
  return {
    design: designWith({ start: median + startOff, step: { kind: 'additive', size: step }, stop }),
    assumed: { law: 'normal', median, spread: 1, between: 0, damage: 0, anyOffset: true },
  };
}

/** Starts into which a random start is cut, each with its own seed. */
const STARTS = 100;

/**
 * Up-and-down tests as the reference cases have them: the start off the median by a normal number with standard deviation
 * `startSd`, here by its quantiles.
 */
export async function staircases(
  stop: Stop,
  step: number,
  startSd: number,
  tests: number,
  withIntervals = true,
): Promise<SimulatedPoint> {
  const blocks: Block[] = [];
  const starts = startSd === 0 ? 1 : STARTS;
  for (let i = 0; i < starts; i++) {
    const { design, assumed } = staircase(stop, step, startSd * normal.quantile((i + 0.5) / starts));
    const tasks = blockTasks(design, assumed, {
      tests: tests / starts,
      seed: i + 1,
      wanted: { ...WHOLE, withIntervals },
    });
    blocks.push(...(await runInline(tasks, () => {})));
  }
  const { design, assumed } = staircase(stop, step, 0);
  return summarise(
    blocks,
    estimatorsFor(design, assumed, { ...WHOLE, withIntervals }),
    tyresOf(assumed, design.protocol.step, 1, 0),
  );
}

/** Simulates in the calling thread. */
export async function simulated(design: Design, assumed: AssumedStrength, tests: number, seed = 1) {
  const blocks = await runInline(blockTasks(design, assumed, { tests, seed }), () => {});
  const estimators = estimatorsFor(design, assumed);
  return summarise(blocks, estimators, tyresOf(assumed, design.protocol.step, design.energyPerLevel, 0));
}
