import type { ConformanceStatus, Severity } from '../../conformance/deviation.ts';
import type { Verdict } from '../../result/criterion.ts';
import { methodName } from '../text/names.ts';
import { englishCharts } from './english-charts.ts';
import { englishEvidence } from './english-evidence.ts';
import { englishSections } from './english-sections.ts';
import { englishStudies } from './english-studies.ts';
import { enumerated, type NamedQuantity, splitWords } from './named-quantity.ts';

/** The English words of a report. Numbers arrive written; foreign text is made safe where it is set. */
export const english = {
  charts: englishCharts,
  ...englishSections,
  ...englishStudies,
  ...englishEvidence,
  between: (lower: string, upper: string) => `${lower} to ${upper}`,
  from: (lower: string) => `from ${lower}, no upper limit`,
  upTo: (upper: string) => `no lower limit, to ${upper}`,
  open: 'no limit on either side',
  tyres: (count: number) => `${count} ${count === 1 ? 'tyre' : 'tyres'}`,
  drops: (count: number) => `${count} ${count === 1 ? 'drop' : 'drops'}`,
  failures: (count: number) => `${count} ${count === 1 ? 'failure' : 'failures'}`,
  list: (names: readonly string[], most = 6) => enumerated(names, most, 'and', (rest) => `${rest} more`),
  sample: (of: {
    tyres: string;
    drops: string;
    valid: number;
    failed: number;
    survived: number;
    out: number;
  }) =>
    `${of.tyres}; ${of.drops}, ${of.valid} valid: ${of.failed} failed, ${of.survived} survived${of.out > 0 ? `; ${of.out} left out` : ''}`,
  quantity: ({ quantity, probability, at, unit, variant }: NamedQuantity, share: string): string => {
    switch (quantity) {
      case 'failureEnergyQuantile':
        return probability === undefined ? 'quantile of the failure energy' : `energy at which ${share} fail`;
      case 'energySpread':
        if (variant === 'between-tyres' || variant === 'from-hit-to-hit')
          return `spread ${methodName(variant)}`;
        return unit === '1' ? 'spread of ln energy' : 'spread of failure energy';
      case 'lifeQuantile':
        return `distance by which ${share} have failed`;
      case 'wearLife':
        return 'distance to the limit of wear';
      case 'weibullShape':
        return 'Weibull shape';
      case 'reliability':
        return at === undefined ? 'reliability' : `reliability at ${at} km`;
      default:
        return splitWords(quantity) + (probability === undefined ? '' : ` at ${share}`);
    }
  },
  method: methodName,
  /** What an entry beside the headline was made under. */
  variant: (name: string) => (name.includes(' ') ? name : methodName(name)),
  channel: (name: string) => name,
  law: (name: string) => name,
  energyDefinition: {
    potential: 'potential, m·g·h',
    'potential-with-compression': 'potential, with the way of compression',
    kinetic: 'kinetic, ½·m·v²',
  } as Record<string, string>,
  fallingMass: (mass: string | null, gravity: string) =>
    `${mass === null ? 'm as logged drop by drop' : `m = ${mass} kg`}; g = ${gravity} m/s²`,
  role: (name: string) => name,
  verdict: {
    pass: 'pass',
    fail: 'fail',
    inconclusive: 'no decision',
    'not-tested': 'not tested',
    invalid: 'invalid',
    waived: 'waived',
    external: 'external',
  } satisfies Record<Verdict, string> as Record<Verdict, string>,
  severity: { note: 'note', minor: 'minor', invalidating: 'invalidating' } satisfies Record<
    Severity,
    string
  > as Record<Severity, string>,
  status: {
    conforming: 'The protocol was kept.',
    deviating: 'The protocol was not kept in all points.',
    invalid: 'The protocol was broken too far for a verdict.',
  } satisfies Record<ConformanceStatus, string> as Record<ConformanceStatus, string>,
  answer: {
    half: (of: { what: string; value: string }) => `Half of ${of.what} fail at about ${of.value}.`,
    noValue: (of: { what: string }) =>
      `The drops on ${of.what} give no single value for the energy at which half fail.`,
    interval: (of: { level: string; range: string; tyres: string; drops: string }) =>
      `The ${of.level} interval is ${of.range}, from ${of.drops} on ${of.tyres}.`,
    noInterval: (of: { tyres: string; drops: string }) =>
      `There is no interval, from ${of.drops} on ${of.tyres}.`,
    noEstimate: (of: { what: string }) => `There is no estimate for ${of.what}.`,
    pass: (of: { specification: string; judged: string }) =>
      `It meets ${of.specification} in all that was judged: ${of.judged}.`,
    fail: (of: { specification: string; failed: string }) =>
      `It does not meet ${of.specification}: ${of.failed}.`,
    open: (of: { specification: string; open: string }) =>
      `Whether it meets ${of.specification} is not decided: ${of.open}.`,
    broken: 'The protocol was broken too far; the numbers are not to be relied on.',
    noSpecification: 'It was judged against no specification.',
    onlyHere: 'The value is bound to this start and step, and may be compared with such tests only.',
    lasts: (of: { what: string; value: string }) => `Half of ${of.what} last about ${of.value} on the drum.`,
    noLife: (of: { what: string }) =>
      `The lives of ${of.what} give no single value for the distance that half of them last.`,
    tyresOf: (names: string) => `${names} tyres`,
    theseTyres: 'these tyres',
    more: (of: { id: string; tyres: string }) => `${of.id}: about ${of.tyres} more would bring a decision.`,
    noMore: (id: string) => `${id}: how many more tyres would bring a decision cannot be reckoned.`,
    notTested: (ids: string) => `Not tested yet: ${ids}.`,
    failed: (ids: string) => `The construction must change, or the limit must be agreed anew: ${ids}.`,
    external: (ids: string) => `To be shown by an accredited laboratory: ${ids}.`,
    settled: 'From this test nothing is left open.',
    decides: (text: string) => `Decision: ${text}`,
    nobody: 'Who decides is not stated in the run.',
    heavier: (of: { value: string; range: string | null }) =>
      `${of.value}${of.range === null ? '' : ` (${of.range})`}`,
  },
  criteria: {
    criterion: 'criterion',
    together: 'all together',
    asks: 'asks for',
    found: 'found',
    distance: 'bound and distance to the limit',
    verdict: 'verdict',
    why: 'why',
    atLeast: (value: string) => `at least ${value}`,
    atMost: (value: string) => `at most ${value}`,
    eachTyre: (quantity: string) => `${quantity} of each tyre`,
    spare: (of: { bound: string; confidence: string; distance: string }) =>
      `${of.confidence} sure of ${of.bound}; ${of.distance} to spare`,
    short: (of: { bound: string; confidence: string; distance: string }) =>
      `${of.confidence} sure of ${of.bound}; short by ${of.distance}`,
    across: (of: { lower: string; upper: string; confidence: string }) =>
      `limit lies between the ${of.confidence} bounds, ${of.lower} and ${of.upper}`,
    open: 'open',
    atLeastBound: (value: string) => `at least ${value}`,
    atMostBound: (value: string) => `at most ${value}`,
    measured: (of: { specimens: number; missing: number; beyond: number }) =>
      `${of.specimens} measured${of.missing > 0 ? `, ${of.missing} not` : ''}; ${of.beyond === 0 ? 'all meet it' : `${of.beyond} beyond it`}`,
    notCounted: 'not counted here',
    more: (count: number) => `and ${count} more criteria, in the full report or in tirelab analyze --json`,
    overall: (verdict: string) => `Verdict: ${verdict}`,
  },
  notShown: {
    drum: 'Life on the road, other loads, speeds, pressures and surfaces: kilometres on the drum are none of these.',
    few: (of: { failures: string; tyres: string }) =>
      `What rarely happens: the result stands on ${of.failures} among ${of.tyres}, and early failures are reached by extrapolation along the assumed law.`,
    road: 'Life on the road, other rims, tubes, pressures and masses: joules at the rig are none of these.',
    low: (of: { tyres: string }) =>
      `Low percentages: with ${of.tyres} the energy at which 10 % or fewer fail is reached by extrapolation along the assumed law.`,
    batch: 'Scatter between batches: the tyres stand for those that they were drawn from.',
    criteria: (ids: string) => `Criteria that this test does not touch: ${ids}.`,
    excluded: (drops: string) => `${drops} left out; the full report gives the reasons.`,
    apparatus: 'The uncertainty of the rig itself, which is not in the intervals.',
  },
  cautions: {
    rising:
      'A rising-height result is bound to its start height and step; compare it only with tests of the same mass, start, step, pressure, rim and rule of hits.',
    repeats: (of: { drops: string; tyres: string }) =>
      `${of.drops} on ${of.tyres} are repeat looks at the same tyres, taken here as independent: the intervals are likely too narrow.`,
    repeatsCalibrated: (of: { drops: string; tyres: string }) =>
      `${of.drops} on ${of.tyres} are repeat looks at the same tyres: the calibrated intervals take 70 % of the variance to lie between tyres; all others take the drops as independent and are likely too narrow.`,
    narrow:
      'From 20 to 50 drops, nominal 95 % intervals held in about 89 to 95 % of simulated up-and-down tests: read them as a little too narrow.',
    accredited: 'The verdict is a statement within this laboratory, unless it is accredited for this method.',
    drumAlways: [
      'The result holds for the tyres tested and for this protocol. Kilometres on a drum are not life on the road.',
      'It replaces neither ISO 4210, ISO 5775 and local rules nor an accredited test, and does not say that a tyre is safe to sell.',
      'Never reach to a rotating drum; wait until it stands; tread and brake stay hot. Stay below the lower of the limits of tyre and rim. The tool does not know the state of the rig and never says that it is safe to reach in.',
    ],
    always: [
      'The result holds for the tyres tested and for this protocol. Joules of a drop are not life on the road.',
      'It replaces neither ISO 4210, ISO 5775 and local rules nor an accredited test, and does not say that a tyre is safe to sell.',
      'Never reach under a raised mass; keep clear of an inflated tyre, and below the lower of the limits of tyre and rim. The tool does not know the state of the rig and never says that it is safe to reach in.',
    ],
  },
};

export type Words = typeof english;
