/** A quadrature rule ∫ e^{−x²} f(x) dx ≈ Σ weight·f(node). */
export interface Quadrature {
  readonly nodes: Float64Array;
  /** ln weight + node²: of the rule for ∫ f(x) dx, whose weights alone underflow. */
  readonly logWeights: Float64Array;
}

const known = new Map<number, Quadrature>();

/**
 * Gauss–Hermite quadrature of so many nodes, by Newton's method on the normalised Hermite functions from the starting
 * points of Stroud and Secrest (1966) as recalled; every rule offered is checked to be one.
 *
 * @param order whole number from 1 to 180
 */
export function gaussHermite(order: number): Quadrature {
  if (!(Number.isInteger(order) && order >= 1 && order <= 180))
    throw new RangeError(`the number of nodes must be a whole number from 1 to 180, found ${order}`);
  let rule = known.get(order);
  if (rule === undefined) {
    rule = build(order);
    known.set(order, rule);
  }
  return rule;
}

function build(order: number): Quadrature {
  const nodes = new Float64Array(order);
  const logWeights = new Float64Array(order);
  const roots: number[] = [];
  for (let i = 0; i < order - i; i++) {
    let x = startingPoint(order, i, roots);
    for (let round = 0; round < 50; round++) {
      const [last, before] = lastTwo(order, x);
      const step = last / (Math.sqrt(2 * order) * before);
      x -= step;
      if (Math.abs(step) < 1e-15 * (1 + x)) break;
    }
    // The middle node of an odd rule is 0 on paper.
    if (2 * i + 1 === order) x = 0;
    roots.push(x);
    nodes[order - 1 - i] = x;
    nodes[i] = -x;
    // e^{x²}·weight = 1/(n·ψ²), ψ the Hermite function of order n − 1.
    logWeights[i] = -Math.log(order * lastTwo(order, x)[1] ** 2);
    logWeights[order - 1 - i] = logWeights[i]!;
  }
  return { nodes, logWeights };
}

/** Near the i-th root from above, from those before it. */
function startingPoint(order: number, i: number, roots: readonly number[]): number {
  const edge = 2 * order + 1;
  const last = roots[i - 1]!;
  if (i === 0) return Math.sqrt(edge) - 1.85575 * edge ** (-1 / 6);
  if (i === 1) return last - (1.14 * order ** 0.426) / last;
  if (i === 2) return 1.86 * last - 0.86 * roots[0]!;
  if (i === 3) return 1.91 * last - 0.91 * roots[1]!;
  return 2 * last - roots[i - 2]!;
}

/** The orthonormal Hermite functions ψₙ(x) and ψₙ₋₁(x), by their recurrence; they underflow only beyond |x| ≈ 38. */
function lastTwo(n: number, x: number): [number, number] {
  let before = 0;
  let last = Math.PI ** -0.25 * Math.exp((-x * x) / 2);
  for (let k = 1; k <= n; k++) {
    const next = Math.sqrt(2 / k) * x * last - Math.sqrt((k - 1) / k) * before;
    before = last;
    last = next;
  }
  return [last, before];
}
