import type { ImpactProtocol } from '../documents/kinds.ts';
import { type Had, remainingDrops, rise } from '../impact/replay/remaining.ts';
import { nextAdvice, type Replay } from '../impact/replay/replay.ts';
import { hitsAllowed, isStepping, plannedLevels, ruleFor } from '../impact/rules/method-rules.ts';
import type { Advice } from '../impact/rules/rule.ts';
import { counted } from '../quantity/format.ts';
import type { NextResult } from '../result/next.ts';
import { energyScale, impactSpeed, potentialEnergy } from '../rig/energy.ts';
import { analyzeImpact } from './analyze-impact.ts';
import { beyondRepair } from './beyond-repair.ts';
import { type Documents, documentsOf, type Request } from './documents-of.ts';
import type { ImpactTest } from './impact-test.ts';
import { recoveryOf } from './recovery.ts';
import { replayTest } from './replay-test.ts';
import { readRunningTest } from './running-test.ts';

/**
 * The advice for the next drop: the protocol's rule asked after the drops so far. A log without rows is a test that has
 * not begun.
 *
 * @param stdin what `-` among the logs stands for.
 * @throws InputError with every problem of documents and logs
 */
export async function next(request: Request, stdin: AsyncIterable<Uint8Array>): Promise<NextResult> {
  return adviseOn(documentsOf(request, stdin));
}

/** The same for documents at hand, whose logs are read anew. */
export async function adviseOn(documents: Documents): Promise<NextResult> {
  const { test, unbegun } = await readRunningTest(documents);
  const hasBegun = test.logs.some(({ drops }) => drops.length > 0);
  return hasBegun ? afterDrops(test) : beforeFirst(test, unbegun);
}

function beforeFirst(test: ImpactTest, unbegun: readonly string[]): NextResult {
  const { protocol, rig } = test;
  const rule = ruleFor(protocol, rig);
  return {
    ...advised(test, rule.advice(rule.start)),
    ...remaining(test, { drops: 0, specimens: 0, onLast: 0 }),
    made: { drops: 0, failures: 0, specimens: 0 },
    estimate: null,
    recovery: recoveryOf(test, null),
    notes: unbegun.map((line) => `no drop yet: ${line}`),
  };
}

function afterDrops(test: ImpactTest): NextResult {
  const { replayed } = replayTest(test);
  const result = analyzeImpact(test);
  const { counts } = replayed;
  const recovery = recoveryOf(test, replayed);
  const broken = beyondRepair(replayed);
  const advice = nextAdvice(replayed);
  const progress = lastSeries(replayed)?.progress ?? { drops: counts.validDrops };
  const shared = {
    made: { drops: counts.validDrops, failures: counts.failures, specimens: counts.usedSpecimens },
    estimate: result.estimates[0] ?? null,
    recovery,
    notes: notesOf(replayed),
  };
  if (broken !== null || advice === null) {
    return {
      ...advised(test, {
        decision: 'stop',
        why: broken ?? 'No drop counts, so the rule has nothing to go by.',
      }),
      decision: null,
      remaining: null,
      remainingWhy: 'the series has to be repeated',
      ...shared,
    };
  }
  const had = {
    drops: progress.drops,
    specimens: counts.usedSpecimens,
    onLast: onLast(test, replayed, advice),
  };
  const left = advice.decision === 'stop' ? { remaining: 0, remainingWhy: null } : remaining(test, had);
  return { ...advised(test, advice), ...left, ...shared };
}

/** The advice with what it means in energy and speed. */
function advised(
  { protocol, rig }: ImpactTest,
  advice: Advice,
): Pick<
  NextResult,
  'protocol' | 'decision' | 'height' | 'mass' | 'energy' | 'impactSpeed' | 'specimen' | 'why'
> {
  const { id, version, method } = protocol;
  const head = { protocol: { id, version, method }, decision: advice.decision, why: advice.why };
  if (advice.decision === 'stop') {
    return { ...head, height: null, mass: null, energy: null, impactSpeed: null, specimen: null };
  }
  const { statedMass, gravity } = energyScale(protocol, rig, [], new Set(['velocity']));
  const byMass = protocol.vary === 'mass';
  const height = byMass ? protocol.height! : advice.height;
  const mass = byMass ? advice.height : (statedMass?.value ?? null);
  return {
    ...head,
    height,
    mass,
    energy: mass === null ? null : potentialEnergy(mass, gravity.value, height),
    impactSpeed: impactSpeed(gravity.value, height),
    specimen: advice.specimen,
  };
}

function remaining({ protocol, rig }: ImpactTest, had: Had): Pick<NextResult, 'remaining' | 'remainingWhy'> {
  const { drops, why } = remainingDrops(protocol, levelsOf(protocol, rig), had);
  return { remaining: drops, remainingWhy: why };
}

function levelsOf(protocol: ImpactProtocol, rig: ImpactTest['rig']) {
  return isStepping(protocol.method) ? plannedLevels(protocol, rig) : null;
}

/** Drops that the specimen under test may still take. */
function onLast({ protocol, rig }: ImpactTest, { drops }: Replay, advice: Advice): number {
  if (advice.decision === 'stop' || advice.specimen === 'new') return 0;
  const last = drops.findLast(({ use }) => use === 'used');
  if (last === undefined) return 0;
  const hits = drops.filter(({ use, drop }) => use === 'used' && drop.specimen === last.drop.specimen).length;
  const levels = levelsOf(protocol, rig);
  const most = protocol.method === 'rising-height' && levels !== null ? rise(levels) : hitsAllowed(protocol);
  return most - hits;
}

function lastSeries({ series }: Replay) {
  return series.reduce<Replay['series'][number] | null>(
    (last, one) => (last === null || one.lastPlace > last.lastPlace ? one : last),
    null,
  );
}

/** Running tests lack drops by nature: what else departs from the protocol is told. */
function notesOf({ deviations }: Replay): string[] {
  const told = deviations.filter(({ code, severity }) => severity !== 'note' && !UNFINISHED.has(code));
  const count = told.reduce((sum, deviation) => sum + deviation.count, 0);
  if (count === 0) return [];
  const codes = [...new Set(told.map(({ code }) => code))].join(', ');
  return [`${counted(count, 'deviation')} so far (${codes}): tirelab analyze shows each`];
}

/** Deviations that mean only that a series is not at its end. */
const UNFINISHED: ReadonlySet<string> = new Set(['DROP-09', 'DROP-10']);
