import { emptySample } from '../likelihood/empty-sample.ts';
import type { RandomStream } from '../random/random-stream.ts';
import { type Cells, cellsOf, logChances, visitCells } from './cells.ts';
import { drawing, type Strength } from './draw.ts';
import { type Experiment, emptyTrials } from './experiment.ts';
import { type LawTable, lawTable } from './law-table.ts';
import { fitQuickly } from './quick-fit.ts';

/** Simulated tests of one experiment, all at one strength, as arrays over the tests. */
export interface Replicates {
  readonly strength: Strength;
  readonly size: number;
  /** Range of the cells that occur. */
  readonly first: number;
  readonly last: number;
  /** Merged observations of test t: entries start[t] to start[t + 1] of `cell` and `count`. */
  readonly start: Int32Array;
  readonly cell: Int32Array;
  readonly count: Float64Array;
  /** Suprema of the log-likelihoods over all laws, and where they are reached, as BestLine. */
  readonly supremum: Float64Array;
  readonly location: Float64Array;
  readonly scale: Float64Array;
  readonly turn: Float64Array;
}

/** An experiment with the room that drawing it takes. */
export interface Drawn {
  readonly cells: Cells;
  readonly table: LawTable;
  /** Carries `size` tests out at a strength. */
  at(strength: Strength, size: number, stream: RandomStream): Replicates;
  /**
   * Logarithms of the chance of each test at a strength, up to a term of the test alone: what the rule does with the
   * outcomes cancels in the ratio of two. Not for hits that share the effect of their specimen.
   */
  logChancesAt(strength: Strength, tests: Replicates, into: Float64Array): void;
}

export function drawn(experiment: Experiment): Drawn {
  const { law, reading, mostDrops, mostSpecimens } = experiment;
  const cells = cellsOf(experiment);
  const kinds = cells.lower.length;
  const mostEntries = Math.min(reading === 'hits' ? mostDrops : mostSpecimens, kinds);
  const table = lawTable(law);
  const trials = emptyTrials(mostDrops);
  const effects = new Float64Array(mostSpecimens);
  const tally = new Int32Array(kinds);
  const sample = emptySample(kinds);
  const best = { location: 0, scale: 0, turn: 0, supremum: 0 };
  const row = new Float64Array(kinds);

  function at(strength: Strength, size: number, stream: RandomStream): Replicates {
    const draw = drawing(experiment, strength);
    const tests = {
      strength,
      size,
      first: kinds,
      last: 0,
      start: new Int32Array(size + 1),
      cell: new Int32Array(size * mostEntries),
      count: new Float64Array(size * mostEntries),
      supremum: new Float64Array(size),
      location: new Float64Array(size),
      scale: new Float64Array(size),
      turn: new Float64Array(size),
    };
    let entry = 0;
    for (let t = 0; t < size; t++) {
      draw(stream, trials, effects);
      let low = kinds;
      let high = 0;
      visitCells(trials, reading, (cell) => {
        tally[cell]!++;
        if (cell < low) low = cell;
        if (cell > high) high = cell;
      });
      sample.size = 0;
      for (let cell = low; cell <= high; cell++) {
        const count = tally[cell]!;
        if (count === 0) continue;
        tally[cell] = 0;
        tests.cell[entry] = cell;
        tests.count[entry++] = count;
        sample.lower[sample.size] = cells.lower[cell]!;
        sample.upper[sample.size] = cells.upper[cell]!;
        sample.count[sample.size++] = count;
      }
      tests.start[t + 1] = entry;
      tests.first = Math.min(tests.first, low);
      tests.last = Math.max(tests.last, high);
      fitQuickly(sample, table, best);
      tests.supremum[t] = best.supremum;
      tests.location[t] = best.location;
      tests.scale[t] = best.scale;
      tests.turn[t] = best.turn;
    }
    return tests;
  }

  return {
    cells,
    table,
    at,
    logChancesAt(strength, { size, first, last, start, cell, count }, into) {
      logChances(table, cells, strength, first, last, row, 0);
      for (let t = 0; t < size; t++) {
        let sum = 0;
        const end = start[t + 1]!;
        for (let e = start[t]!; e < end; e++) sum += count[e]! * row[cell[e]!]!;
        into[t] = sum;
      }
    },
  };
}
