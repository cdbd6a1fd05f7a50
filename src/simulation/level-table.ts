/** The levels that a simulated test has come to, numbered in order of first use, with what each costs to know. */
export interface LevelTable {
  readonly size: number;
  /** Number of a level (mm). */
  place(level: number): number;
  /** mm, and J, of the level with a number. */
  readonly level: readonly number[];
  readonly energy: readonly number[];
  /** The energy on the fitted scale. */
  readonly y: readonly number[];
}

/** @param energyPerLevel J for a mm; @param scale of the law that is fitted */
export function levelTable(energyPerLevel: number, scale: 'identity' | 'log'): LevelTable {
  const known = new Map<number, number>();
  const level: number[] = [];
  const energy: number[] = [];
  const y: number[] = [];
  return {
    get size() {
      return level.length;
    },
    level,
    energy,
    y,
    place(at) {
      const found = known.get(at);
      if (found !== undefined) return found;
      const number = level.length;
      known.set(at, number);
      level.push(at);
      energy.push(at * energyPerLevel);
      y.push(scale === 'log' ? Math.log(at * energyPerLevel) : at * energyPerLevel);
      return number;
    },
  };
}
