// Invented data for the pictures: nothing is checked against their numbers, only how they are drawn.
import type { VerdictChances } from '../../../src/reports/charts/characteristic.ts';
import { characteristicFigure } from '../../../src/reports/charts/characteristic.ts';
import { type ComparedConstruction, comparisonFigure } from '../../../src/reports/charts/comparison.ts';
import { criteriaFigure } from '../../../src/reports/charts/criteria.ts';
import { dropsFigure } from '../../../src/reports/charts/drops.ts';
import type { Figure } from '../../../src/reports/charts/figure.ts';
import { type Life, livesFigure } from '../../../src/reports/charts/lives.ts';
import { massEnergyFigure } from '../../../src/reports/charts/mass-energy.ts';
import { responseFigure } from '../../../src/reports/charts/response.ts';
import { timelineFigure } from '../../../src/reports/charts/timeline.ts';
import { tyresFigure } from '../../../src/reports/charts/tyres.ts';
import { wearFigure } from '../../../src/reports/charts/wear.ts';
import { weibullFigure } from '../../../src/reports/charts/weibull.ts';
import type { Language } from '../../../src/reports/words/language.ts';
import { passing } from '../results.ts';

/** How names and sizes of the invented data are to be. */
export interface Gallery {
  readonly language: Language;
  /** Makes a name what it is to be: hostile, for instance. */
  readonly name: (plain: string) => string;
  /** All energies, masses and distances times this. */
  readonly times: number;
}

const median = 50.7;
const spread = 2.9;
const logistic = (x: number) => 1 / (1 + Math.exp(-1.7 * x));

/** Every kind of picture once; null where one refuses such data. */
export function gallery({ language, name, times }: Gallery): Record<string, Figure | null> {
  const path = passing.path.map((drop) => ({
    ...drop,
    specimen: name(drop.specimen),
    height: drop.height * times,
    energy: drop.energy === null ? null : (drop.energy + 10.5) * times,
  }));
  return {
    drops: dropsFigure({ path, protocol: passing.protocol }, 'drops', language),
    response: responseFigure(
      {
        curve: {
          distribution: 'normal',
          level: 0.95,
          points: Array.from({ length: 61 }, (_, i) => {
            const energy = 38 + i * 0.4;
            const z = (energy - median) / spread;
            return {
              energy: energy * times,
              failure: logistic(z),
              lower: logistic(0.7 * z - 0.7),
              upper: logistic(0.7 * z + 0.7),
            };
          }),
        },
        path,
        median: { text: '50.7 J', range: '49.0 to 53.2 J' },
        limit: { probability: 0.5, limit: 45 * times, bound: 49.3 * times, confidence: '95 %' },
        level: '95 %',
      },
      'response',
      language,
    ),
    tyres: tyresFigure(
      Array.from({ length: 10 }, (_, i) => ({
        specimen: name(`T-${i + 1}`),
        mass: 900,
        lower: i === 0 ? null : (30 + i * 2) * times,
        upper: i === 9 ? null : (32 + i * 2) * times,
        drops: 4,
      })),
      { limit: 35 * times, median: { value: 41 * times, lower: 38 * times, upper: 44 * times } },
      'tyres',
      language,
    ),
    criteria: criteriaFigure(
      passing.criteria.map((criterion) => ({ ...criterion, id: name(criterion.id) })),
      'criteria',
      language,
    ),
    comparison: comparisonFigure(
      compared(name, times),
      { title: 'median failure energy (J)', unit: 'J' },
      'comparison',
      language,
    ),
    massEnergy: massEnergyFigure(
      compared(name, times).map((own, i) => ({
        name: own.name,
        mass: (860 + 17 * i) * times,
        energy: own.value!,
        lower: own.lower,
        upper: own.upper,
      })),
      'median failure energy (J)',
      'mass-energy',
      language,
    ),
    massOfDrops: massEnergyFigure(
      path.map((drop, i) => ({
        name: drop.specimen,
        mass: (890 + ((i * 37) % 31)) * times,
        energy: drop.energy!,
        standing: drop.outcome === 'failed' ? ('failed' as const) : ('survived' as const),
      })),
      'energy (J)',
      'mass-of-drops',
      language,
    ),
    timeline: timelineFigure(
      {
        channel: name('speed'),
        unit: 'km/h',
        minutes: minutes(3 * 24 * 60),
        schedule: [
          { from: START, to: START + 4 * 3_600_000, value: 25, lower: 24.5, upper: 25.5 },
          { from: START + 4 * 3_600_000, to: START + 72 * 3_600_000, value: 30, lower: 29.4, upper: 30.6 },
        ],
        nights: [0, 1, 2].map((day) => ({
          from: START + (day * 24 + 14) * 3_600_000,
          to: START + (day * 24 + 22) * 3_600_000,
        })),
      },
      'timeline',
      language,
    ),
    lives: livesFigure(lives(name, times), 5000 * times, 'lives', language),
    weibull: weibullFigure(
      {
        points: [3110, 4020, 4670, 5900, 7100].map((life, i) => ({
          life: life * times,
          share: (i + 0.7) / 8.4,
        })),
        suspensions: [5000 * times, 8000 * times, 8000 * times],
        fit: { shape: 2.6, characteristicLife: 7200 * times },
        band: Array.from({ length: 41 }, (_, i) => {
          const life = 2500 + i * 150;
          const z = 2.6 * Math.log(life / 7200);
          return {
            life: life * times,
            lower: 1 - Math.exp(-Math.exp(0.9 * z - 0.8)),
            upper: 1 - Math.exp(-Math.exp(0.9 * z + 0.8)),
          };
        }),
        level: '95 %',
      },
      'weibull',
      language,
    ),
    wear: wearFigure(
      {
        readings: ['A', 'B', 'C'].flatMap((tyre, t) =>
          [500, 1500, 2500, 3500].map((distance, i) => ({
            specimen: name(tyre),
            distance: distance * times,
            depth: 1.8 - (0.18 * distance) / 1000 - 0.03 * ((t + i) % 3),
          })),
        ),
        lines: [
          {
            specimen: name('A'),
            points: Array.from({ length: 11 }, (_, i) => ({
              distance: i * 600 * times,
              depth: 1.77 - 0.18 * i * 0.6,
              lower: 1.74 - 0.2 * i * 0.6,
              upper: 1.8 - 0.16 * i * 0.6,
            })),
          },
        ],
        limit: 0.9,
        crossing: { value: 4830 * times, lower: 4200 * times, upper: 5620 * times },
      },
      'wear',
      language,
    ),
    characteristic: characteristicFigure(chances(times), 45 * times, 'characteristic', language),
  };
}

const START = Date.UTC(2026, 2, 9, 6);

/** A drum that runs three days, stands for twenty minutes every six hours, and once runs away for a minute. */
function minutes(count: number) {
  return Array.from({ length: count }, (_, i) => {
    const running = i % 360 < 340;
    const set = i < 240 ? 25 : 30;
    const swing = 0.15 * Math.sin(i / 50);
    const peak = i === 2000 ? 2.4 : 0;
    return {
      time: START + i * 60_000,
      running,
      mean: running ? set + swing : 0,
      min: running ? set + swing - 0.2 : 0,
      max: running ? set + swing + 0.2 + peak : 0,
    };
  });
}

function compared(name: (plain: string) => string, times: number): ComparedConstruction[] {
  return [
    ['C-110@1', 45.2, 43.1, 47.0, 'c', true],
    ['C-114@2', 50.7, 48.9, 53.2, 'a', false],
    ['C-115@1', 49.8, 47.6, 52.9, 'ab', false],
    ['C-116@1', 47.9, 46.0, null, 'b', false],
  ].map(([id, value, lower, upper, group, reference]) => ({
    name: name(id as string),
    value: (value as number) * times,
    lower: (lower as number) * times,
    upper: upper === null ? null : (upper as number) * times,
    group: group as string,
    reference: reference as boolean,
  }));
}

function lives(name: (plain: string) => string, times: number): Life[] {
  return [
    { specimen: name('D-01'), survived: 8000 * times, failed: null },
    { specimen: name('D-02'), survived: 4500 * times, failed: 5000 * times, cause: name('bead') },
    { specimen: name('D-03'), survived: 3110 * times, failed: 3110 * times, cause: name('casing') },
    { specimen: name('D-04'), survived: 5000 * times, failed: null, cause: name('tube') },
    { specimen: name('D-05'), survived: 0, failed: 900 * times, cause: name('tread') },
  ];
}

function chances(times: number): VerdictChances[] {
  return Array.from({ length: 11 }, (_, i) => {
    const truth = 40 + i;
    const pass = logistic((truth - 47) / 1.2);
    const fail = logistic((43 - truth) / 1.2);
    return { truth: truth * times, pass, fail, inconclusive: Math.max(0, 1 - pass - fail) };
  });
}
