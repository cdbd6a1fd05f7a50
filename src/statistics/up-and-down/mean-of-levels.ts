/**
 * The mean of the levels of drops 2 … n + 1 of an up-and-down test, the level that would come next included and the
 * first, which was chosen beforehand, left out: an estimate of the median on the scale of the levels. Brownlee, Hodges
 * and Rosenblatt (1953), JASA 48, 262–277 (definition from memory).
 *
 * With the two count estimates: N_f·m_f + N_s·m_s = n·mean − (next − first)/2.
 *
 * @param levels of all drops in order, on the scale where the step is constant
 * @param next level that the rule gives after the last drop
 * @throws RangeError without a drop
 */
export function meanOfLevels(levels: readonly number[], next: number): number {
  if (levels.length === 0) throw new RangeError('the mean of levels needs at least one drop');
  let sum = next;
  for (let i = 1; i < levels.length; i++) sum += levels[i]!;
  return sum / levels.length;
}
