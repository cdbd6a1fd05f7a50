/** A published rule on the last few points of a chart, in standard deviations from the centre line. */
export type RunRule =
  /** `count` of the last `of` points beyond `beyond` sigma on one side; a point on the line counts as inside. */
  | { readonly kind: 'one-side'; readonly count: number; readonly of: number; readonly beyond: number }
  /** So many points in a row, each above the one before, or each below. */
  | { readonly kind: 'trend'; readonly points: number }
  | { readonly kind: 'alternating'; readonly points: number }
  /** All within one sigma. */
  | { readonly kind: 'close'; readonly points: number }
  /** None within one sigma, on either side. */
  | { readonly kind: 'apart'; readonly points: number };

const oneSide = (count: number, of: number, beyond: number): RunRule => ({
  kind: 'one-side',
  count,
  of,
  beyond,
});

/** Western Electric, Statistical Quality Control Handbook (1956). */
export const westernElectricRules: Readonly<Record<'WE1' | 'WE2' | 'WE3' | 'WE4', RunRule>> = {
  WE1: oneSide(1, 1, 3),
  WE2: oneSide(2, 3, 2),
  WE3: oneSide(4, 5, 1),
  WE4: oneSide(8, 8, 0),
};

/** Nelson (1984), J. Quality Technology 16, 237–239. */
export const nelsonRules: Readonly<Record<'N1' | 'N2' | 'N3' | 'N4' | 'N5' | 'N6' | 'N7' | 'N8', RunRule>> = {
  N1: oneSide(1, 1, 3),
  N2: oneSide(9, 9, 0),
  N3: { kind: 'trend', points: 6 },
  N4: { kind: 'alternating', points: 14 },
  N5: oneSide(2, 3, 2),
  N6: oneSide(4, 5, 1),
  N7: { kind: 'close', points: 15 },
  N8: { kind: 'apart', points: 8 },
};

/** Says in words what a rule found. */
export function describeRule(rule: RunRule): string {
  switch (rule.kind) {
    case 'one-side': {
      const where =
        rule.beyond === 0 ? 'on one side of the centre line' : `beyond ${rule.beyond} sigma on one side`;
      if (rule.of === 1) return `a point beyond ${rule.beyond} sigma`;
      return rule.count === rule.of
        ? `${rule.count} in a row ${where}`
        : `${rule.count} of ${rule.of} ${where}`;
    }
    case 'trend':
      return `${rule.points} in a row steadily rising or falling`;
    case 'alternating':
      return `${rule.points} in a row alternating up and down`;
    case 'close':
      return `${rule.points} in a row within 1 sigma`;
    case 'apart':
      return `${rule.points} in a row beyond 1 sigma, on either side`;
  }
}

/** The places, from 0, at which the points up to there meet the rule; a run that goes on signals again at each point. */
export function signalsOf(rule: RunRule, z: readonly number[]): number[] {
  const width = rule.kind === 'one-side' ? rule.of : rule.points;
  return z.flatMap((_, i) => {
    const last = z.slice(Math.max(0, i + 1 - width), i + 1);
    return meets(rule, last) ? [i] : [];
  });
}

function meets(rule: RunRule, last: readonly number[]): boolean {
  if (rule.kind === 'one-side') {
    const beyond = (side: 1 | -1) => last.filter((z) => side * z > rule.beyond).length;
    return beyond(1) >= rule.count || beyond(-1) >= rule.count;
  }
  if (last.length < rule.points) return false;
  const steps = last.slice(1).map((z, i) => Math.sign(z - last[i]!));
  switch (rule.kind) {
    case 'trend':
      return steps[0] !== 0 && steps.every((step) => step === steps[0]);
    case 'alternating':
      return steps[0] !== 0 && steps.every((step, i) => i === 0 || step === -steps[i - 1]!);
    case 'close':
      return last.every((z) => Math.abs(z) <= 1);
    case 'apart':
      return last.every((z) => Math.abs(z) > 1);
  }
}
