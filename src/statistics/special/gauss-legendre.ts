/** Nodes and weights of a quadrature. */
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * The Gauss–Legendre rule of so many points on [from, to]: exact for polynomials of degree 2·points − 1. Nodes by Newton's
 * method on the Legendre polynomial from Tricomi's guess cos(π(i − ¼)/(n + ½)).
 */
export function gaussLegendre(points: number, from: number, to: number): Quadrature {
  const nodes = new Float64Array(points);
  const weights = new Float64Array(points);
  const half = 0.5 * (to - from);
  const middle = 0.5 * (to + from);
  for (let i = 0; i < points; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 0;
    for (let step = 0; step < 12; step++) {
      let before = 0;
      let value = 1;
      for (let k = 1; k <= points; k++) {
        const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
        before = value;
        value = next;
      }
      slope = (points * (before - x * value)) / (1 - x * x);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes[points - 1 - i] = middle + half * x;
    weights[points - 1 - i] = (2 * half) / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
