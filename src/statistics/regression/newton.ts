/** A log-likelihood at a point: its value, its gradient and its matrix of second derivatives (row by row). */
export interface Peak {
  value: number;
  readonly gradient: Float64Array;
  readonly hessian: Float64Array;
}

/** Where a log-likelihood is highest, with the inverse of the observed information there. */
export interface Maximum {
  readonly point: Float64Array;
  readonly value: number;
  /** Row by row. */
  readonly covariance: Float64Array;
  readonly iterations: number;
}

const MOST_ITERATIONS = 200;

/**
 * Newton's method with the observed information; where that is not positive definite, or a step does not rise, the
 * diagonal is raised until it does (Levenberg). It ends when the Newton decrement is below 1e-18 (a step of 1e-9 standard
 * errors; with a noise of its own, 1e-5 of that) and takes that step.
 *
 * @param evaluate fills the peak at a point; a value of −∞ or NaN turns a step back
 * @param noise the relative error of the value, such as that of a quadrature: a fall by less is not taken for one
 * @throws Error when it does not settle
 */
export function maximise(
  evaluate: (point: Float64Array, into: Peak) => void,
  start: Float64Array,
  noise = 1e-14,
): Maximum {
  const found = tryMaximise(evaluate, start, noise);
  if (found === null) throw new Error(`the likelihood did not settle in ${MOST_ITERATIONS} steps`);
  return found;
}

/** The same, but null where it does not settle: for likelihoods that may be flat. */
export function tryMaximise(
  evaluate: (point: Float64Array, into: Peak) => void,
  start: Float64Array,
  noise: number,
): Maximum | null {
  const size = start.length;
  const empty = (): Peak => ({
    value: 0,
    gradient: new Float64Array(size),
    hessian: new Float64Array(size * size),
  });
  let here = empty();
  let trial = empty();
  let point = Float64Array.from(start);
  let next = Float64Array.from(start);
  const factor = new Float64Array(size * size);
  const step = new Float64Array(size);
  evaluate(point, here);
  // What is left to gain must not be sought below the noise: its gradient is as uncertain.
  const settled = noise > 1e-14 ? 1e-5 * noise : 1e-18;
  let damping = 0;
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration++) {
    if (!factorise(here.hessian, damping, factor, size)) {
      damping = Math.max(1e-3, damping * 10);
      continue;
    }
    substitute(factor, here.gradient, step, size);
    let decrement = 0;
    for (let i = 0; i < size; i++) decrement += step[i]! * here.gradient[i]!;
    for (let i = 0; i < size; i++) next[i] = point[i]! + step[i]!;
    if (decrement < settled && damping === 0) {
      return { point: next, value: here.value, covariance: inverse(factor, size), iterations: iteration };
    }
    evaluate(next, trial);
    if (trial.value >= here.value - noise * Math.abs(here.value)) {
      [here, trial] = [trial, here];
      [point, next] = [next, point];
      damping = damping < 1e-3 ? 0 : damping / 10;
    } else if (damping > 1e12) {
      return null;
    } else damping = Math.max(1e-3, damping * 10);
  }
  return null;
}

/** Cholesky factor of −hessian with its diagonal raised by the share `damping`; false where it is not positive definite. */
function factorise(hessian: Float64Array, damping: number, into: Float64Array, size: number): boolean {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = -hessian[i * size + j]!;
      if (i === j) sum += damping * (Math.abs(sum) + 1e-12);
      for (let k = 0; k < j; k++) sum -= into[i * size + k]! * into[j * size + k]!;
      if (i === j) {
        if (!(sum > 0)) return false;
        into[i * size + i] = Math.sqrt(sum);
      } else into[i * size + j] = sum / into[j * size + j]!;
    }
  }
  return true;
}

/** Solves L·Lᵀ·x = b. */
function substitute(factor: Float64Array, b: Float64Array, x: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * size + k]! * x[k]!;
    x[i] = sum / factor[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < size; k++) sum -= factor[k * size + i]! * x[k]!;
    x[i] = sum / factor[i * size + i]!;
  }
}

function inverse(factor: Float64Array, size: number): Float64Array {
  const out = new Float64Array(size * size);
  const unit = new Float64Array(size);
  const column = new Float64Array(size);
  for (let j = 0; j < size; j++) {
    unit.fill(0);
    unit[j] = 1;
    substitute(factor, unit, column, size);
    for (let i = 0; i < size; i++) out[i * size + j] = column[i]!;
  }
  return out;
}
