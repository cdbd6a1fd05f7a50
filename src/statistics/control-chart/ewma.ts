/** A design of the exponentially weighted moving average. */
export interface EwmaDesign {
  readonly target: number;
  /** Standard deviation of a single point. */
  readonly sigma: number;
  /** λ: the weight of the newest point, above 0 and at most 1. */
  readonly weight: number;
  /** Limits at so many standard deviations of the average. */
  readonly width: number;
}

/** A point of the chart. */
export interface EwmaPoint {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  readonly signal: boolean;
}

/**
 * The exponentially weighted moving average zₜ = λxₜ + (1 − λ)zₜ₋₁ from the target (Roberts 1959; Lucas & Saccucci 1990), with
 * the limits that hold at each point: target ± L·σ·√(λ/(2 − λ)·(1 − (1 − λ)²ᵗ)).
 */
export function ewmaChart(values: readonly number[], design: EwmaDesign): EwmaPoint[] {
  const { target, weight } = design;
  checkDesign(design);
  let average = target;
  return values.map((value, i) => {
    average = weight * value + (1 - weight) * average;
    const half = ewmaHalfWidth(design, i + 1);
    const signal = Math.abs(average - target) > half;
    return { value: average, lower: target - half, upper: target + half, signal };
  });
}

/** Half width of the limits at the t-th point; Infinity for t gives that of the long run. */
export function ewmaHalfWidth({ sigma, weight, width }: EwmaDesign, t: number): number {
  const share = 1 - (1 - weight) ** (2 * t);
  return width * sigma * Math.sqrt((weight / (2 - weight)) * share);
}

function checkDesign({ sigma, weight, width }: EwmaDesign): void {
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`weight ${weight} is not above 0 and at most 1`);
  if (!(sigma > 0)) throw new RangeError(`standard deviation ${sigma} is not above 0`);
  if (!(width > 0)) throw new RangeError(`width ${width} is not above 0`);
}
