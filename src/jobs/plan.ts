import { loadEarlierResult } from '../documents/earlier-result.ts';
import { hitsAllowed } from '../impact/rules/method-rules.ts';
import { readSpecimens } from '../logs/specimens.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Input } from '../result/analysis.ts';
import type { Answer, Effort, PlannedGain, PlannedPrecision, PlanResult } from '../result/plan.ts';
import { type GainSeen, sizeForGain, visibleGain } from '../simulation/gain.ts';
import { type Precision, precisionAt, sizeForPrecision } from '../simulation/precision.ts';
import { MOST_SIZE, sizeUnit } from '../simulation/sizes.ts';
import type { AssumedStrength } from '../simulation/strength.ts';
import { laws } from '../statistics/laws/laws.ts';
import { energyOf, type StatedStrength } from './assumed-strength.ts';
import { type DesignedTest, designOf } from './design-of.ts';
import { documentsOf } from './documents-of.ts';
import { assumptionsOf } from './plan-assumptions.ts';
import { levelsOf } from './plan-levels.ts';
import { proposalFrom } from './plan-proposal.ts';
import { runSheet, type SheetSpecimen, unnamed } from './plan-sheet.ts';
import { dropTestOnly } from './simulate.ts';

/** What is to be planned; texts are quantities as written. */
export interface PlanRequest {
  readonly protocol: string;
  readonly rig: string | null;
  /** A number, or a table of specimens; null for as many as the protocol asks. */
  readonly specimens: string | null;
  readonly strength: StatedStrength;
  /** Half width of what is wished for the median, as an energy or a height. */
  readonly precision: string | null;
  /** Of one construction's median over another's. */
  readonly gain: string | null;
  readonly power: string;
  readonly perDrop: string;
  readonly perSpecimen: string;
  readonly from: readonly string[];
  readonly tests: number;
  readonly seed: number;
}

/** Most specimens of a run sheet. */
const MOST_SPECIMENS = 10_000;

/**
 * Lays a drop test out beforehand: its levels, its run sheet, and what tests of which size can show, by simulation of
 * this very protocol.
 *
 * @throws InputError with every problem of documents and wishes
 */
export async function plan(request: PlanRequest): Promise<PlanResult> {
  const documents = documentsOf(
    {
      kind: 'files',
      protocol: request.protocol,
      rig: request.rig,
      constructions: [],
      specification: null,
      specimens: null,
      logs: [],
    },
    nothing(),
  );
  const protocol = dropTestOnly(documents.protocol, 'planned');
  const design = designOf(protocol, documents.rig, null);
  const wishes = readWishes(request, design);
  const earlier = request.from.map(loadEarlierResult);
  const proposal = earlier.length > 0 ? proposalFrom(earlier, design) : null;
  const assumptions = assumptionsOf(request.strength, design, proposal);
  const { specimens, input, isStated } = await specimensOf(request.specimens, design);
  const simulating = { tests: request.tests, seed: request.seed };
  const assumed = assumptions.assumed;
  const effort = (drops: number, tyres: number): Effort => ({
    drops,
    specimens: tyres,
    hours: (drops * wishes.perDrop + tyres * wishes.perSpecimen) / 60,
  });
  const ask = <Found>(question: (assumed: AssumedStrength) => Answer<Found>): Answer<Found> =>
    assumed === null ? { found: null, why: assumptions.why! } : question(assumed);
  const toJoule = (within: number) => joulesOf(design, assumed, within);
  const precise = ({ size, within, drops, specimens: tyres }: Precision): PlannedPrecision => ({
    size,
    within: { value: toJoule(within.value), error: toJoule(within.error) },
    effort: effort(drops, tyres),
  });
  const seen = ({ size, gain, power, drops, specimens: tyres }: GainSeen): PlannedGain => ({
    size,
    gain,
    power,
    effort: effort(drops, tyres),
  });
  const { confidence } = protocol;
  const question = { power: wishes.power, confidence };
  const asWritten = ask<PlannedPrecision>((strength) => {
    const size = writtenSize(design);
    if (size === null)
      return { found: null, why: 'the stop rule of the protocol is no fixed number: see "tirelab simulate"' };
    return { found: precise(precisionAt(design, size, strength, confidence, simulating)), why: null };
  });
  const tooMany = { found: null, why: `more than ${MOST_SIZE} ${sizeUnit(protocol)} would be needed` };
  return {
    kind: 'plan',
    protocol: { id: protocol.id, version: protocol.version, method: protocol.method, title: protocol.title },
    inputs: [...documents.inputs, ...(input === null ? [] : [input])],
    energy: { mass: design.mass, gravity: design.gravity.value, gravityFrom: design.gravity.from },
    levels: levelsOf(design),
    sizeUnit: sizeUnit(protocol),
    confidence,
    assumed: assumptions.shown,
    tests: request.tests,
    seed: request.seed,
    minutes: { perDrop: wishes.perDrop, perSpecimen: wishes.perSpecimen },
    asWritten,
    precision:
      wishes.precision === null
        ? null
        : {
            wished: wishes.precision,
            ...ask<PlannedPrecision>((strength) => {
              const wished = fittedWidth(design, strength, wishes.precision!);
              const found = sizeForPrecision(design, wished, strength, confidence, simulating);
              return found === null ? tooMany : { found: precise(found), why: null };
            }),
          },
    gain:
      wishes.gain === null
        ? null
        : {
            wished: wishes.gain,
            wishedPower: wishes.power,
            ...ask<PlannedGain>((strength) => {
              const found = sizeForGain(design, wishes.gain!, strength, question, simulating);
              return found === null ? tooMany : { found: seen(found), why: null };
            }),
          },
    atHand: isStated
      ? {
          specimens: specimens.length,
          ...ask<PlannedGain>((strength) => {
            const size = sizeOfEach(design, Math.floor(specimens.length / 2));
            const few = { found: null, why: 'too few tyres for two constructions' };
            if (size < 1) return few;
            const found = visibleGain(design, size, strength, question, simulating);
            return found === null
              ? { found: null, why: 'not even a doubling would be seen with this power' }
              : { found: seen(found), why: null };
          }),
        }
      : null,
    proposal,
    sheet: runSheet(specimens, design, request.seed),
    defaults: [...protocol.defaults, ...assumptions.defaults],
    notes: [...design.notes, ...tooManyHits(design, asWritten.found)],
  };
}

/** A rise that needs more sites than a tyre has cannot be kept to the protocol (DROP-33). */
function tooManyHits({ protocol }: DesignedTest, found: PlannedPrecision | null): string[] {
  const allowed = hitsAllowed(protocol);
  if (found === null || protocol.method !== 'rising-height' || !Number.isFinite(allowed)) return [];
  const hits = found.effort.drops / found.effort.specimens;
  if (hits <= allowed) return [];
  return [
    `a rise takes ${hits.toFixed(1)} hits on average, more than the ${allowed} that the protocol allows on a tyre (DROP-33): start higher, or take a larger step`,
  ];
}

interface Wishes {
  /** J. */
  readonly precision: number | null;
  readonly gain: number | null;
  readonly power: number;
  readonly perDrop: number;
  readonly perSpecimen: number;
}

function readWishes(request: PlanRequest, design: DesignedTest): Wishes {
  const problems: Problem[] = [];
  const wrong = (flag: string, message: string) => {
    problems.push({ file: flag, line: null, column: null, code: 'wish', message });
    return Number.NaN;
  };
  const number = (
    flag: string,
    text: string,
    reading: ReturnType<typeof energyOf>,
    isRight: (value: number) => boolean,
    expected: string,
  ): number => {
    if (!reading.ok) return wrong(flag, reading.why);
    return isRight(reading.value) ? reading.value : wrong(flag, `found "${text}", expected ${expected}`);
  };
  const plain = (text: string, unit: string): ReturnType<typeof energyOf> => {
    const reading = readQuantity(text, unit);
    return reading.ok ? { ok: true, value: reading.value.value } : reading;
  };
  const above = (value: number) => value > 0;
  const { precision, gain, power, perDrop, perSpecimen } = request;
  const minutes = (flag: string, text: string) =>
    number(flag, text, plain(text, 'min'), (value) => value >= 0, 'nought or more');
  const wishes = {
    precision:
      precision === null
        ? null
        : number('--precision', precision, energyOf(precision, design), above, 'more than nought'),
    gain: gain === null ? null : number('--gain', gain, plain(gain, '1'), above, 'more than nought'),
    power: number(
      '--power',
      power,
      plain(power, '1'),
      (value) => value > 0 && value < 1,
      'between 0 % and 100 %',
    ),
    perDrop: minutes('--per-drop', perDrop),
    perSpecimen: minutes('--per-tyre', perSpecimen),
  };
  if (problems.length > 0) throw new InputError(problems);
  return wishes;
}

async function specimensOf(
  stated: string | null,
  design: DesignedTest,
): Promise<{ specimens: readonly SheetSpecimen[]; input: Input | null; isStated: boolean }> {
  if (stated === null) return { specimens: unnamed(usualCount(design)), input: null, isStated: false };
  if (/^\d+$/u.test(stated)) {
    const count = Number(stated);
    if (count >= 1 && count <= MOST_SPECIMENS)
      return { specimens: unnamed(count), input: null, isStated: true };
    const message = `found "${stated}", expected from 1 to ${MOST_SPECIMENS}`;
    throw new InputError([{ file: '--specimens', line: null, column: null, code: 'wish', message }]);
  }
  const { path, sha256, bytes, specimens } = await readSpecimens(stated);
  return {
    specimens,
    input: { role: 'specimens', path, sha256, bytes, rows: specimens.length },
    isStated: true,
  };
}

/** Specimens that the protocol as written takes at most; 30 where it does not say. */
function usualCount({ protocol }: DesignedTest): number {
  const { stop, levels, perLevel } = protocol;
  if (stop?.specimens !== undefined) return stop.specimens;
  const drops =
    stop?.atMost ?? stop?.drops ?? (levels !== null && perLevel !== null ? levels.length * perLevel : 30);
  return Math.ceil(drops / hitsOf(protocol));
}

function hitsOf(protocol: DesignedTest['protocol']): number {
  const hits = hitsAllowed(protocol);
  return Number.isFinite(hits) ? hits : 1;
}

/** The size of the test that so many specimens allow. */
function sizeOfEach({ protocol }: DesignedTest, specimens: number): number {
  switch (sizeUnit(protocol)) {
    case 'specimens':
      return specimens;
    case 'drops per level':
      return Math.floor((specimens * hitsOf(protocol)) / protocol.levels!.length);
    case 'drops':
      return specimens * hitsOf(protocol);
  }
}

function writtenSize({ protocol }: DesignedTest): number | null {
  const { stop, perLevel } = protocol;
  switch (sizeUnit(protocol)) {
    case 'specimens':
      return stop?.specimens ?? null;
    case 'drops per level':
      return perLevel;
    case 'drops':
      return stop?.drops !== undefined && stop.rarer === undefined ? stop.drops : null;
  }
}

/** Widths are simulated on the fitted scale: of laws of ln E a width there is a share of the median. */
function joulesOf({ protocol }: DesignedTest, assumed: AssumedStrength | null, width: number): number {
  return laws[protocol.distribution].scale === 'log' ? Math.expm1(width) * assumed!.median : width;
}

function fittedWidth({ protocol }: DesignedTest, { median }: AssumedStrength, joules: number): number {
  return laws[protocol.distribution].scale === 'log' ? Math.log1p(joules / median) : joules;
}

async function* nothing(): AsyncGenerator<Uint8Array> {}
