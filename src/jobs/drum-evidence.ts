import type { ConformanceStatus, ListedDeviation } from '../conformance/deviation.ts';
import { eventDeviations } from '../endurance/event-deviations.ts';
import { foundLives } from '../endurance/life/found-lives.ts';
import { lifeDeviations } from '../endurance/life/life-deviations.ts';
import { lifeOf, type TyreLife } from '../endurance/life/lives.ts';
import { type DrumRecords, protocolDeviations } from '../endurance/protocol-deviations.ts';
import { kilometres } from '../endurance/summary.ts';
import { deviationsOfRuns } from '../endurance/tyres.ts';
import { wearDeviations } from '../endurance/wear/wear-readings.ts';
import type { DrumRun } from './drum-run.ts';
import type { EnduranceTest } from './endurance-test.ts';

/** What a drum test shows before anything is estimated: lives, and whether they may be relied on. */
export interface DrumEvidence {
  readonly lives: readonly TyreLife[];
  readonly deviations: readonly ListedDeviation[];
  readonly conformance: { readonly status: ConformanceStatus; readonly why: string | null };
}

/** Lives and departures of a drum test whose files have been read. */
export function drumEvidence(test: EnduranceTest): DrumEvidence {
  const lives = livesOf(test);
  const deviations = [
    ...deviationsOfRuns(runsOf(test)),
    ...lifeDeviations(lives),
    ...wearDeviations(test.inspections?.records ?? []),
    ...eventDeviations(test.events?.records ?? []),
    ...protocolDeviations(recordsOf(test, lives)),
  ];
  return { lives, deviations, conformance: conformanceOf(deviations) };
}

/**
 * The lives of the tyres, from the tables of outcomes, and of tyres that these do not have from inspections and events.
 * Where a log tells how far a tyre ran at the condition, the lower end is of those kilometres and the upper end of every
 * one.
 */
function livesOf(test: EnduranceTest): TyreLife[] {
  const { outcomes, drum, inspections, events, tyres } = test;
  const told = outcomes.flatMap(({ records }) => records);
  const found = foundLives({
    inspections: inspections?.records ?? [],
    events: events?.records ?? [],
    known: new Set(told.map(({ specimen }) => specimen)),
    reached: (specimen) => runOfTyre(test, specimen)?.reached ?? null,
  });
  const isAlone = told.length + found.length === 1 && drum !== null;
  const ofLog = (specimen: string) => {
    const run = tyres.length > 0 ? runOfTyre(test, specimen) : isAlone ? drum : null;
    return run && { notAtCondition: run.summary.distance.excluded + run.summary.distance.unverified };
  };
  return [
    ...told.map((outcome) => lifeOf(outcome, ofLog(outcome.specimen))),
    ...found.map(({ outcome, notAtCondition }) =>
      lifeOf(outcome, notAtCondition === null ? ofLog(outcome.specimen) : { notAtCondition }),
    ),
  ];
}

/** What is laid side by side to see whether the test kept to its documents. */
function recordsOf(test: EnduranceTest, lives: readonly TyreLife[]): DrumRecords {
  const { protocol, rig, drum, tyres, register } = test;
  const { ledger, plan } = drum?.pass ?? { ledger: null, plan: null };
  return {
    protocol,
    drum: rig?.drum ?? null,
    summary: drum?.summary ?? null,
    lives,
    inspections: test.inspections?.records ?? [],
    events: test.events?.records ?? [],
    checks: test.checks?.records ?? [],
    register,
    positions: new Set(tyres.flatMap(({ tyre }) => (tyre?.stints ?? []).map(({ position }) => position)))
      .size,
    signs: (ledger?.signs.listed ?? []).map((sign) => ({ ...sign, km: kilometres(sign.distance, plan!) })),
  };
}

/** What the log says of a tyre: its own columns on a drum of several positions, else those of the drum. */
function runOfTyre({ drum, tyres }: EnduranceTest, specimen: string): DrumRun | null {
  if (tyres.length === 0) return drum;
  return tyres.find(({ tyre }) => tyre?.specimen === specimen) ?? null;
}

function runsOf({ drum, tyres }: EnduranceTest): readonly DrumRun[] {
  if (tyres.length > 0) return tyres;
  return drum === null ? [] : [drum];
}

function conformanceOf(deviations: readonly ListedDeviation[]): DrumEvidence['conformance'] {
  const condemning = deviations.filter(
    ({ severity, scope }) => severity === 'invalidating' && (scope === 'run' || scope === 'comparison'),
  );
  if (condemning.length > 0) {
    const codes = [...new Set(condemning.map(({ code, scope }) => `${code} invalidates the whole ${scope}`))];
    return { status: 'invalid', why: `${codes.join('; ')}: no estimate can be trusted.` };
  }
  const isClean = deviations.every(({ severity }) => severity === 'note');
  return { status: isClean ? 'conforming' : 'deviating', why: null };
}
