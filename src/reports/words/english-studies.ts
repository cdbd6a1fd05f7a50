/** Words of comparisons and of simulated tests. */
export const englishStudies = {
  comparison: {
    heading: 'Constructions against each other',
    factors: 'Is only the declared variable another?',
    energies: 'Energies, second over first',
    influence: 'Without one tyre',
    factor: 'factor',
    state: 'state',
    pair: 'pair',
    point: 'point',
    ratio: 'ratio',
    difference: 'difference (J)',
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
    ofReference: (name: string) => `median failure energy, share of ${name} (%)`,
    less: (share: string) => `${share} less`,
    more: (share: string) => `${share} more`,
    atMost: (change: string) => `no lower end, ${change} at most`,
    atLeast: (change: string) => `from ${change}, no upper end`,
    each: (count: number) => `${count} tyres each`,
    counts: (first: number, second: number) => `${first} and ${second} tyres`,
    survives: (of: {
      what: string;
      against: string;
      change: string;
      level: string;
      range: string;
      tyres: string;
    }) =>
      `${of.what} survives ${of.change} energy than ${of.against}: the ${of.level} interval is ${of.range}, ${of.tyres}.`,
    same: (of: { what: string; against: string; level: string; range: string; tyres: string }) =>
      `${of.what} survives the same energy as ${of.against}: the ${of.level} interval is ${of.range}, ${of.tyres}.`,
    noRatio: (of: { what: string; against: string; tyres: string }) =>
      `How ${of.what} stands to ${of.against} cannot be told by one number, ${of.tyres}.`,
    toldApart: 'The two are told apart by these numbers.',
    notToldApart: 'The two are not told apart by these numbers.',
    adjusted: 'All pairs are judged together, by Holm.',
    smallest: (share: string) => `They would have shown a difference of ${share} four times in five.`,
    refused: 'These runs are not compared: not only what was declared differs.',
    notComparable:
      'The tests stand beside each other and were not compared: that asks for drop tests of one construction each.',
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
