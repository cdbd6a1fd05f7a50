import type { Criterion } from '../documents/kinds.ts';
import { nightEntries, signEntries, stripEntries } from '../endurance/course-entries.ts';
import { CLOCK_FROM } from '../endurance/duration.ts';
import { equivalenceEstimates } from '../endurance/equivalence.ts';
import { otherEvents } from '../endurance/event-deviations.ts';
import { estimatesByCause } from '../endurance/life/by-cause.ts';
import { unclearCauses } from '../endurance/life/life-deviations.ts';
import { estimatesOfLife } from '../endurance/life/life-estimates.ts';
import { lifeEvidence } from '../endurance/life/life-evidence.ts';
import { fitLife } from '../endurance/life/life-fit.ts';
import { isClosed, type TyreLife } from '../endurance/life/lives.ts';
import { medianRanks, nonparametricEstimates, survivalCurve } from '../endurance/life/nonparametric.ts';
import { referredPressures } from '../endurance/referred-pressure.ts';
import { scheduleDistance } from '../endurance/schedule-distances.ts';
import { ledgerEntry, scheduleEntries } from '../endurance/schedule-entries.ts';
import { tyreEntries } from '../endurance/tyres.ts';
import { wearEstimates, wearEvidence } from '../endurance/wear/wear-estimates.ts';
import { wearOf } from '../endurance/wear/wear-readings.ts';
import type { Finding } from '../logs/finding.ts';
import { counted } from '../quantity/format.ts';
import type { Period } from '../result/analysis.ts';
import type { EnduranceResult, LifeEntry } from '../result/endurance.ts';
import { withoutEvidence } from '../verdict/evidence.ts';
import { judgeSpecification } from '../verdict/judge-specification.ts';
import { drumEvidence } from './drum-evidence.ts';
import type { EnduranceTest } from './endurance-test.ts';

/** Ledger, lives, estimates and verdict of a drum test whose files have been read. */
export function analyzeEndurance(test: EnduranceTest): EnduranceResult {
  const { protocol, rig, constructions, specification, drum } = test;
  const { lives, deviations, conformance } = drumEvidence(test);
  const { confidence, distribution } = protocol;
  const basis = { lives, confidence, ...askedFor(test) };
  const fit = fitLife(lives, distribution);
  const wear = wearOf(test.inspections?.records ?? []);
  const judged =
    specification &&
    judgeSpecification(specification, {
      protocol,
      evidenceFor: (criterion) =>
        conformance.status === 'invalid'
          ? withoutEvidence('invalid', conformance.why, lives.length)
          : criterion.quantity === 'wearRate'
            ? wearEvidence(criterion, wear)
            : lifeEvidence(criterion, fit, lives),
      measurementsFor: (criterion) => measurements(test, criterion),
    });
  const ranks = medianRanks(lives);
  return {
    kind: 'endurance',
    run: test.run,
    protocol: { id: protocol.id, version: protocol.version, title: protocol.title, distribution },
    rig: rig && { id: rig.id, config: rig.config },
    constructions: constructions.map(({ id, revision }) => ({ id, revision })),
    specification: specification && { id: specification.id, version: specification.version },
    inputs: test.inputs,
    period: drumPeriod(test),
    defaults: [...protocol.defaults, ...(specification?.defaults ?? [])],
    notes: [...notesOf(test), ...unclearCauses(lives), ...otherEvents(test.events?.records ?? [])],
    conformance: { ...conformance, deviations, excluded: 0 },
    sample: {
      specimens: lives.length,
      drops: 0,
      validDrops: 0,
      failures: lives.filter(({ failed }) => failed).length,
      suspensions: lives.filter(({ failed }) => !failed).length,
      censored: lives.length === 0 ? null : lives.filter((life) => !isClosed(life)).length,
    },
    schedule: scheduleEntries(protocol.schedule, drum?.summary ?? null),
    distance: {
      ...ledgerEntry(drum?.summary.distance ?? null),
      why: drum === null ? 'no log of the drum was given' : null,
    },
    tyres: tyreEntries(test.tyres, protocol.schedule),
    signs: signEntries(drum?.pass ?? null),
    strips: stripEntries(drum?.pass ?? null),
    nights: nightEntries(drum?.pass ?? null),
    lives: lives.map((life) => lifeEntry(life, ranks.get(life.specimen) ?? null)),
    survival: survivalCurve(lives),
    estimates: [
      ...estimatesOfLife(fit, basis),
      ...nonparametricEstimates(basis),
      ...estimatesByCause(basis, distribution),
      ...wearEstimates(wear, protocol.wearLimit ?? null, confidence),
      ...equivalenceEstimates(protocol.equivalence ?? null, drum?.summary ?? null, lives.length, confidence),
      ...referredPressures(protocol.pressureAt ?? null, drum?.summary ?? null, lives.length),
    ],
    criteria: judged?.criteria ?? [],
    verdict: judged?.verdict ?? null,
  };
}

/** Only a log with a clock says when; elapsed seconds do not. */
function drumPeriod({ drum }: EnduranceTest): Period {
  const { firstTime = 0, lastTime = 0 } = drum?.summary ?? {};
  const iso = (time: number) => (time > CLOCK_FROM ? new Date(time).toISOString() : null);
  return { from: iso(firstTime), to: iso(lastTime), gauges: [] };
}

/** What the specification asks of this protocol, and the distance of the whole schedule. */
function askedFor({ specification, protocol }: EnduranceTest) {
  const own = (specification?.criteria ?? []).filter((criterion) => criterion.protocol?.id === protocol.id);
  const whole = scheduleDistance(protocol.schedule);
  return {
    shares: own.flatMap(({ probability }) => probability ?? []),
    distances: [...own.flatMap(({ at }) => at ?? []), ...(whole === null ? [] : [whole])],
  };
}

function measurements({ register }: EnduranceTest, { quantity }: Criterion) {
  const column = quantity === 'pressureLoss' ? 'pressure loss' : quantity;
  return (register?.specimens ?? [])
    .filter(({ role }) => role === null || role === 'candidate')
    .map(({ specimen, measured }) => ({ specimen, value: measured[column] ?? null }));
}

function lifeEntry(
  { specimen, line, failed, lower, upper, cause }: TyreLife,
  medianRank: number | null,
): LifeEntry {
  return {
    specimen,
    line,
    outcome: failed ? 'failed' : 'suspended',
    lower: failed && lower === 0 ? null : lower,
    upper: Number.isFinite(upper) ? upper : null,
    cause,
    medianRank,
  };
}

/** What was noticed while the files were read, and what nobody could look at. */
function notesOf({ outcomes, drum, tyres, register, inspections, events }: EnduranceTest): string[] {
  const tables = [
    ...outcomes,
    ...(drum?.files ?? []),
    ...present(register),
    ...present(inspections),
    ...present(events),
  ];
  const repeats = drum?.pass.ledger.events.byKind.get('duplicate');
  const tallied = (drum?.files ?? []).flatMap(({ path, tallies }) =>
    tallies.map(
      ({ code, count, firstLine, lastLine }) =>
        `${path}: ${counted(count, code.replaceAll('-', ' '))}, lines ${firstLine} to ${lastLine}`,
    ),
  );
  const isAlone = outcomes.flatMap(({ records }) => records).length === 1;
  return [
    ...tables.flatMap(({ path, findings }) => findings.map((finding) => findingSentence(path, finding))),
    ...tallied,
    ...(repeats
      ? [
          `${counted(repeats.count, 'row')} written twice in a row: counted once, the last in line ${repeats.last.line}`,
        ]
      : []),
    ...(drum?.summary.unseen ?? []).map(
      (what) => `the schedule limits the ${what}, and the log has no column for it: not checked`,
    ),
    ...(outcomes.length > 0 && drum === null
      ? ['no log of the drum was given: the distances of the outcomes are taken as run at the set condition']
      : []),
    ...(outcomes.length > 0 && drum !== null
      ? [
          isAlone
            ? 'the life of the tyre is an interval: from its kilometres at the set condition to every kilometre that it ran'
            : tyres.length > 0
              ? 'several tyres on one drum: the life of each is an interval by its own ledger; schedule and distance are those of the first'
              : 'several tyres and one ledger: the distances of the outcomes are taken as written, the ledger is not taken from them',
        ]
      : []),
  ];
}

function present<Table>(table: Table | null): Table[] {
  return table === null ? [] : [table];
}

function findingSentence(path: string, { message, line, column }: Finding): string {
  return `${[path, line, column].filter((part) => part !== null).join(':')}: ${message}`;
}
