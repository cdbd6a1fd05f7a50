/** A construction against another, in words and written numbers. */
interface Finding {
  readonly kind: 'impact' | 'endurance';
  readonly what: string;
  readonly against: string;
  readonly level: string;
  readonly range: string;
  readonly tyres: string;
}

/** Words of comparisons and of simulated tests. */
export const englishStudies = {
  comparison: {
    heading: 'Constructions against each other',
    factors: 'Is only the declared variable another?',
    energies: { impact: 'Energies, second over first', endurance: 'Lives, second over first' },
    influence: 'Without one tyre',
    factor: 'factor',
    state: 'state',
    pair: 'pair',
    point: 'point',
    ratio: 'ratio',
    difference: (unit: string) => `difference (${unit})`,
    basis: {
      calibrated: 'calibrated',
      'profile-likelihood': 'profile-likelihood',
      'specimen-effect': 'single hits on fresh tyres',
    },
    spreads: { common: 'common spread', separate: 'own spreads' },
    states: {
      equal: 'equal',
      declared: 'declared',
      consequence: 'consequence, as listed',
      differs: 'differs',
      unknown: 'not shown to be equal',
    },
    median: 'median',
    percentPoint: (share: string) => `${share} point`,
    notRecorded: 'not recorded',
    despite: (reason: string) => `put aside: ${reason}`,
    alsoEqual: (names: string) => `Equal: ${names}.`,
    ofReference: (kind: 'impact' | 'endurance', name: string) =>
      `${kind === 'impact' ? 'median failure energy' : 'median life'}, share of ${name} (%)`,
    less: (share: string) => `${share} less`,
    more: (share: string) => `${share} more`,
    atMost: (change: string) => `no lower end, ${change} at most`,
    atLeast: (change: string) => `from ${change}, no upper end`,
    each: (count: number) => `${count} tyres each`,
    counts: (first: number, second: number) => `${first} and ${second} tyres`,
    survives: (of: Finding & { change: string }) =>
      `${of.what} ${of.kind === 'impact' ? `survives ${of.change} energy` : `lasts ${of.change} distance`} than ${of.against}: the ${of.level} interval is ${of.range}, ${of.tyres}.`,
    same: (of: Finding) =>
      `${of.what} ${of.kind === 'impact' ? 'survives the same energy' : 'lasts the same distance'} as ${of.against}: the ${of.level} interval is ${of.range}, ${of.tyres}.`,
    noRatio: (of: { what: string; against: string; tyres: string }) =>
      `How ${of.what} stands to ${of.against} cannot be told by one number, ${of.tyres}.`,
    toldApart: 'The two are told apart by these numbers.',
    notToldApart: 'The two are not told apart by these numbers.',
    holm: 'All pairs are judged together, by Holm.',
    smallest: (share: string) => `They would have shown a difference of ${share} four times in five.`,
    refused: 'These runs are not compared: not only what was declared differs.',
    notComparable:
      'The tests stand beside each other and were not compared: that asks for tests of one kind, with their constructions named.',
    aliasing: 'What may go together with the construction',
    aliasingStates: {
      constant: 'the same for all',
      crossed: 'mixed',
      partly: 'partly together',
      aliased: 'TOGETHER: not to be told apart',
      unknown: 'unknown',
    },
    margin: 'Against a margin',
    marginHolds: (of: { what: string; against: string; margin: string; bound: string }) =>
      `${of.what} loses no more than ${of.margin} against ${of.against}: the ratio is at least ${of.bound}.`,
    marginBroken: (of: { what: string; against: string; margin: string; bound: string }) =>
      `${of.what} loses more than ${of.margin} against ${of.against}: the ratio is at most ${of.bound}.`,
    marginOpen: (of: { what: string; against: string; margin: string }) =>
      `Whether ${of.what} loses more than ${of.margin} against ${of.against} is not decided.`,
    relative: 'Against the reference of the same day',
    eachByReference: (pair: string) => `${pair}, each by its reference`,
    adjusted: (names: string) => `Allowing for ${names}`,
    allEqual: (of: { statistic: string; degrees: number; p: string }) =>
      `All equal: likelihood ratio ${of.statistic} on ${of.degrees}, p = ${of.p}.`,
    logRank: 'Log-rank test, no law assumed',
    tradeOff: {
      impact: 'Energy against the mass of the tyre',
      endurance: 'Life against the mass of the tyre',
    },
    dominated: (of: { names: string; isToldApart: boolean }) =>
      `beaten by ${of.names}${of.isToldApart ? '' : ', though not told apart'}`,
    frontier: 'none is lighter and better',
    verdictInfluence: 'Verdicts that turn without one tyre',
    turns: (of: { specimen: string; sample: string; criterion: string; whole: string; without: string }) =>
      `${of.specimen} (${of.sample}): ${of.criterion} turns from ${of.whole} to ${of.without} without it.`,
    unread: 'Not read',
    morePairs: (pairs: number) => `${pairs} more pairs in the full report`,
  },
  simulation: {
    title: 'Simulated tests',
    finding: (of: { tests: string; protocol: string; median: string | null; points: number }) =>
      of.median === null
        ? `${of.tests} tests by ${of.protocol} were simulated at each of ${of.points} true medians.`
        : `${of.tests} tests by ${of.protocol} were simulated at a true median of ${of.median}.`,
    even: (of: { median: string; specification: string }) =>
      `A construction is as likely as not to pass ${of.specification} at a true median of ${of.median}.`,
    judgedBy: (specification: string) => `Judged by ${specification}.`,
    assumed: 'Assumed',
    law: 'law of strength',
    spread: 'spread',
    ofLogarithm: 'of ln E',
    between: 'share of the variance between tyres',
    damage: 'strength lost by each hit survived',
    offset: 'median moved by up to half a step in each test',
    energy: 'energy',
    fitted: 'law fitted',
    seed: 'seed',
    tests: 'tests at each median',
    median: 'true median',
    bias: 'bias',
    deviation: 'std. dev.',
    holds: 'interval holds',
    drops: 'drops',
    tyres: 'tyres',
    table: 'Over the true median',
    errors: 'Errors of the estimates',
    estimate: 'estimate',
    truth: 'truth',
    intervals: 'Intervals: how often they hold the truth',
    promised: 'promised',
    held: 'held',
    sides: (sides: 1 | 2): string => (sides === 2 ? 'two-sided' : 'lower bound'),
    monteCarlo:
      'Behind ± stands one standard error of the simulation; more tests make it smaller, not the test better.',
    invented:
      'The tyres are invented: a real construction may follow another law, and its spread is not known beforehand.',
  },
};
