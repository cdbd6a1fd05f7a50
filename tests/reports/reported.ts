import { deflateSync } from 'node:zlib';
// Invented tests as a report is given them: plain ones, and the worst that a run could bring.
import { responseCurve } from '../../src/impact/estimates/response-curve.ts';
import type { ImpactResult } from '../../src/result/analysis.ts';
import type { Photo, ReportedSample, ReportedTest } from '../../src/result/report.ts';
import { passing, rising, undecided } from './results.ts';

const PNG = greyPicture(800, 600).toString('base64');

const photo = (caption: string): Photo => ({
  path: 'photos/cut.png',
  caption,
  type: 'image/png',
  base64: PNG,
  sha256: 'ab'.repeat(32),
  bytes: 79,
});

const request: ReportedTest['request'] = {
  question: 'Does C-114 withstand pinching as well as the trail specification asks?',
  decision: 'release for the field trial, by the head of product',
  customer: 'product group trail, desk 4',
  laboratory: 'Lab 7, Works road 1, Town',
  place: null,
  rule: 'lower one-sided 95 % bound at or above the limit',
  agreed: '2026-02-20',
  received: '2026-03-02, undamaged',
  tested: null,
  report: 'R-2026-017',
  issued: '2026-03-12',
  authorised: 'head of laboratory',
  replaces: null,
};

/** A result with its drops as one sample, and a response curve of them. */
export function reported(result: ImpactResult, more: Partial<ReportedTest> = {}): ReportedTest {
  return {
    title: 'Pinch cut of the new casing',
    result,
    request,
    confidence: 0.95,
    method: {
      failure: 'loss of air within 60 s by a cut of tube or casing',
      distribution: 'normal',
      start: '500 mm',
      step: '25 mm',
      stop: 'drops: 30',
    },
    constructions: result.constructions.map(({ id, revision }) => ({
      id,
      revision,
      title: null,
      category: 'trail',
      size: '62-622',
      parent: 'C-110@1',
      declared: ['casing.tpi'],
      factors: { 'casing.plies': '2', 'casing.tpi': '60', mass: '905 g' },
    })),
    conditions: [
      { name: 'mass', planned: '8.000 kg', unit: 'kg', logged: null },
      {
        name: 'pressure',
        planned: '2.0 bar ± 0.05 bar',
        unit: 'bar',
        logged: { least: 1.97, mean: 2.003, most: 2.07, drops: 30 },
      },
      { name: 'temperature', planned: null, unit: '°C', logged: null },
    ],
    samples: [sampleOf(result)],
    exclusions: result.path.flatMap((drop, i) =>
      drop.used
        ? []
        : [
            {
              drop: i + 1,
              specimen: drop.specimen,
              line: drop.line,
              height: drop.height,
              because: 'DROP-16',
              remark: null,
            },
          ],
    ),
    photos: [photo('T-12, inside, scale 1 mm')],
    days: { first: '2026-03-09', last: '2026-03-10' },
    ...more,
  };
}

function sampleOf({ path }: ImpactResult): ReportedSample {
  const used = path.filter(({ used, energy }) => used && energy !== null);
  const observations = used.map(({ energy, outcome }) => ({
    lower: outcome === 'failed' ? -Infinity : energy!,
    upper: outcome === 'failed' ? energy! : Infinity,
    count: 1,
  }));
  const specimens = [...new Set(used.map(({ specimen }) => specimen))];
  return {
    name: null,
    construction: null,
    isReference: false,
    path,
    tyres: specimens.map((specimen, i) => {
      const own = used.filter((drop) => drop.specimen === specimen);
      const of = (outcome: string) =>
        own.filter((drop) => drop.outcome === outcome).map(({ energy }) => energy!);
      return {
        specimen,
        mass: i % 7 === 6 ? null : 890 + ((i * 13) % 31),
        lower: of('survived').length > 0 ? Math.max(...of('survived')) : null,
        upper: of('failed').length > 0 ? Math.min(...of('failed')) : null,
        drops: own.length,
      };
    }),
    curve: responseCurve(observations, 'normal', 0.95, [38]),
  };
}

const BAD = [
  '<script>alert(1)</script>',
  '[x](javascript:alert(1)) ![x](http://a.b/c) <img src=x onerror=alert(1)>',
  '\u202eevil\u2066 \u001b[31m\u0000\u0007',
  'W'.repeat(10_000),
  `"'><svg onload=alert(1)>&amp;| a | b |\n# heading\n---`,
  '=cmd()|/c calc; @import "http://a.b"; </style>',
];

/** Every text of a value made hostile; words that the program itself chooses are kept. */
export function hostile<Value>(value: Value, key = '', seed = { n: 0 }): Value {
  const kept = [
    'kind',
    'method',
    'type',
    'base64',
    'sha256',
    'unit',
    'quantity',
    'status',
    'verdict',
    'severity',
    'scope',
    'outcome',
    'distribution',
    'definition',
    'role',
    'name',
    'rule',
    'interval',
    'first',
    'last',
    'because',
    'variant',
    'state',
    'spreads',
  ];
  if (typeof value === 'string')
    return (kept.includes(key) ? value : `${value} ${BAD[seed.n++ % BAD.length]}`) as Value;
  if (Array.isArray(value)) return value.map((item) => hostile(item, key, seed)) as Value;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([own, item]) => [own, hostile(item, own, seed)]),
  ) as Value;
}

/** What only some tests have: several samples, waiting numbers, repeated tests, other laws, effects, the rig's budget. */
const everything: ImpactResult = {
  ...passing,
  provisional: ['the check of 2026-03-11 was made at 11:03, after the first drop (DROP-29)'],
  samples: (['candidate', 'reference'] as const).map((role) => ({
    name: `C-114@2 as ${role}`,
    construction: 'C-114@2',
    role,
    rig: 'drop-2@2026-03',
    rim: '25 mm TC',
    specimens: 15,
    drops: 15,
    validDrops: 15,
    failures: 6,
    censored: null,
    verdict: role === 'candidate' ? ('invalid' as const) : null,
  })),
  amendments: [
    {
      file: 'amendments.csv',
      line: 2,
      log: 'drops.csv',
      logLine: 25,
      drop: 24,
      specimen: 'T-24',
      what: 'outcome',
      old: 'survived',
      new: 'failed',
      reason: 'DROP-43 slow leak',
      by: 'T2',
      on: '2026-03-12',
    },
  ],
  replaces: {
    run: 'run-116',
    path: 'runs/116.yaml',
    sha256: 'cd'.repeat(32),
    reason: 'DROP-20',
    approver: 'Q1',
  },
  retests: [
    {
      specimen: 'T-31',
      replaces: 'T-07',
      reason: 'DROP-16',
      approver: 'Q1',
      file: 'specimens.csv',
      line: 32,
    },
  ],
  massCorrections: [
    {
      rig: 'drop-2@2026-03',
      from: 'rig',
      stated: 8,
      used: { least: 7.964, most: 7.97 },
      drops: 30,
      file: 'drops.csv',
      firstLine: 2,
      lastLine: 31,
      by: 'certificate W-7',
      on: '2026-03-13',
    },
  ],
  goodness: {
    laws: [
      { distribution: 'normal', logLikelihood: -15.2, aic: 34.4, weight: 0.52 },
      { distribution: 'weibull', logLikelihood: -15.3, aic: 34.6, weight: 0.48 },
    ],
    without: [{ distribution: 'lognormal', why: 'it has no level at or below nought' }],
    grouped: {
      distribution: 'normal',
      deviance: 3.1,
      pearson: 2.8,
      degrees: 4,
      pDeviance: 0.54,
      pPearson: null,
      why: '6 levels leave nothing to test beside a location and a spread',
    },
    why: null,
    caveat: 'a law is chosen beforehand, not by fit',
  },
  regression: {
    unit: 'J',
    effects: [
      { name: 'pressure', term: 'pressure', value: 12.4, standardError: 4.1, per: 'bar' },
      { name: 'construction C-115@1', term: 'construction', value: -3.2, standardError: 1.4, per: null },
    ],
    tests: [
      { term: 'pressure', statistic: 8.31, degrees: 1, p: 0.0039, why: null },
      {
        term: 'construction',
        statistic: null,
        degrees: null,
        p: null,
        why: 'each rise stands with the mean of its hits',
      },
    ],
    why: null,
    notes: ['pressure: effect per bar, mean 2.003 bar'],
  },
  uncertainty: {
    at: { energy: 40.1, height: 512, mass: 8, gravity: 9.81, pressure: 2 },
    lines: (['mass', 'height', 'friction'] as const).map((of, i) => ({
      of,
      source: `certificate W-${i}, half a digit`,
      scope: i === 0 ? ('common' as const) : ('drop' as const),
      unit: of === 'friction' ? '1' : of === 'mass' ? 'kg' : 'mm',
      standardUncertainty: 0.004 * (i + 1),
      degrees: i === 0 ? null : 50,
      sensitivity: 5,
      contribution: 0.02 * (i + 1),
    })),
    common: { standardUncertainty: 0.02, degrees: null },
    drop: { standardUncertainty: 0.07, degrees: 61.2 },
    whole: { standardUncertainty: 0.075, degrees: 80.4 },
    check: {
      energy: 40.1,
      trials: 10_000,
      seed: 1,
      level: 0.95,
      propagated: { lower: 39.95, upper: 40.25 },
      drawn: { lower: 39.96, upper: 40.24 },
      tolerance: 0.05,
      agrees: true,
    },
    estimates: [
      {
        quantity: 'medianFailureEnergy',
        unit: 'J',
        value: 40.1,
        standardError: 0.8,
        common: 0.02,
        combined: 0.8,
        degrees: null,
        level: 0.95,
        factor: 1.96,
        expanded: 1.6,
        interval: { level: 0.95, lower: 38.5, upper: null },
      },
    ],
    notes: ['the uncertainty of the pressure is left out: the protocol sets no pressure'],
  },
};

/** A result whose joules, millimetres and limits are so many times as large. */
function scaled(result: ImpactResult, times: number): ImpactResult {
  const of = (value: number | null) => (value === null ? null : value * times);
  return {
    ...result,
    path: result.path.map((drop) => ({ ...drop, height: drop.height * times, energy: of(drop.energy) })),
    estimates: result.estimates.map((estimate) => ({
      ...estimate,
      value: of(estimate.value),
      standardError: of(estimate.standardError),
      interval: estimate.interval && {
        ...estimate.interval,
        lower: of(estimate.interval.lower),
        upper: of(estimate.interval.upper),
      },
    })),
    criteria: result.criteria.map((criterion) => ({
      ...criterion,
      estimate: of(criterion.estimate),
      bounds: { lower: of(criterion.bounds.lower), upper: of(criterion.bounds.upper) },
      limit:
        criterion.limit.atLeast === undefined
          ? criterion.limit
          : { ...criterion.limit, atLeast: criterion.limit.atLeast * times },
    })),
  };
}

const empty: ImpactResult = {
  ...passing,
  run: null,
  rig: null,
  constructions: [],
  specification: null,
  inputs: [],
  defaults: [],
  notes: [],
  path: [],
  estimates: [],
  criteria: [],
  verdict: null,
  sample: { specimens: 0, drops: 0, validDrops: 0, failures: 0, censored: null },
};

const allSurvived = {
  ...undecided,
  path: undecided.path.map((drop) => ({ ...drop, outcome: 'survived' as const })),
};

const nothingStated = Object.fromEntries(
  Object.keys(request).map((key) => [key, null]),
) as unknown as ReportedTest['request'];

export const reportedTests: Readonly<Record<string, readonly ReportedTest[]>> = {
  passing: [reported(passing)],
  'rising in height': [reported(rising)],
  undecided: [reported(undecided)],
  'with everything that a test can have': [reported(everything)],
  'hostile with everything': [hostile(reported(everything))],
  'empty of everything': [
    reported(empty, { request: nothingStated, photos: [], title: null, days: null, constructions: [] }),
  ],
  'of one tyre': [
    reported({
      ...passing,
      path: passing.path.slice(0, 1),
      sample: { specimens: 1, drops: 1, validDrops: 1, failures: 0, censored: null },
    }),
  ],
  'survived throughout': [reported(allSurvived)],
  'of huge values': [reported(scaled(passing, 1e9))],
  'of tiny values': [reported(scaled(passing, 1e-9))],
  'hostile in every text': [
    hostile(
      reported(
        { ...passing, criteria: Array.from({ length: 9 }, () => passing.criteria).flat() },
        { photos: [photo('a'), photo('b'), photo('c')] },
      ),
    ),
  ],
  'one of several': [
    reported(passing),
    reported({ ...rising, run: 'run-118' }),
    hostile(reported(undecided)),
  ],
};

/** A grey picture as large as a photograph is shown, and small as a file. */
function greyPicture(width: number, height: number): Buffer {
  const chunk = (type: string, data: Uint8Array) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((width + 1) * height, 0xb4);
  for (let row = 0; row < height; row++) rows[row * (width + 1)] = 0;
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
