import type { DrumEvent } from '../../logs/events.ts';
import type { Inspection } from '../../logs/inspections.ts';
import type { DrumOutcome } from '../../logs/outcomes.ts';

/** How far a test had come at an instant, km. */
export interface Reached {
  readonly run: number;
  readonly atCondition: number;
  /** Whether the log of the drum covers the instant. */
  readonly isLogged: boolean;
}

/** How a tyre ended, as inspections and events tell it where no table of outcomes does. */
export interface FoundLife {
  readonly outcome: DrumOutcome;
  /** km of its log that were not at the condition up to then; null where no log tells. */
  readonly notAtCondition: number | null;
}

/** Tables that tell of ends, and the log by which a time becomes a distance. */
export interface EndsTold {
  readonly inspections: readonly Inspection[];
  readonly events: readonly DrumEvent[];
  /** Tyres whose outcome stands in a table. */
  readonly known: ReadonlySet<string>;
  /** Null where no log of the drum is of that tyre. */
  readonly reached: (specimen: string) => ((time: number) => Reached) | null;
}

/** Words by which an event, or the kind of an inspection, tells an end. Common practice, no source. */
const FAILED: ReadonlySet<string> = new Set(['failed', 'failure', 'burst']);
const TAKEN_OFF: ReadonlySet<string> = new Set(['taken off', 'removed', 'suspended']);

/**
 * The ends that inspections and events tell of tyres whose outcome nobody wrote into a table of its own: exact where an
 * event says when it failed, between two looks where an inspection found it failed, a suspension where it was taken off.
 * The cause is the event's value or the inspection's finding. A sign in the log is none of these, and never an end.
 */
export function foundLives(told: EndsTold): readonly FoundLife[] {
  const { inspections, events, known } = told;
  const named = [...inspections, ...events].flatMap(({ specimen }) => specimen ?? []);
  const specimens = [...new Set(named)];
  // An event of the whole drum ends the one tyre that runs on it.
  const only = specimens.length === 1 ? specimens[0]! : null;
  return specimens
    .filter((specimen) => !known.has(specimen))
    .flatMap((specimen) => {
      const own = events.filter((event) => (event.specimen ?? only) === specimen);
      const looks = inspections.filter((look) => look.specimen === specimen);
      return endByEvent(specimen, own, looks, told) ?? endByLook(specimen, looks) ?? [];
    });
}

function endByEvent(
  specimen: string,
  events: readonly DrumEvent[],
  looks: readonly Inspection[],
  { reached }: EndsTold,
): FoundLife | null {
  const end = events.find(
    ({ event }) => FAILED.has(event.toLowerCase()) || TAKEN_OFF.has(event.toLowerCase()),
  );
  const at = end && reached(specimen)?.(end.time);
  if (!end || !at?.isLogged) return null;
  const { file, line, event, value } = end;
  const hasFailed = FAILED.has(event.toLowerCase());
  const found = looks.find(({ kind }) => FAILED.has(kind?.toLowerCase() ?? ''));
  const cause = value ?? found?.finding ?? null;
  const outcome = { file, line, specimen, survived: at.run, failed: hasFailed ? at.run : null, cause };
  return { outcome, notAtCondition: at.run - at.atCondition };
}

function endByLook(specimen: string, looks: readonly Inspection[]): FoundLife | null {
  const ended = looks.findIndex(({ kind }) => FAILED.has(kind?.toLowerCase() ?? ''));
  if (ended >= 0) {
    const { file, line, distance, finding } = looks[ended]!;
    const whole = looks
      .slice(0, ended)
      .map((look) => look.distance)
      .filter((km) => km < distance);
    const survived = whole.length === 0 ? null : Math.max(...whole);
    return {
      outcome: { file, line, specimen, survived, failed: distance, cause: finding },
      notAtCondition: null,
    };
  }
  const off = looks.find(({ kind }) => TAKEN_OFF.has(kind?.toLowerCase() ?? ''));
  if (!off) return null;
  const { file, line, distance, finding } = off;
  return {
    outcome: { file, line, specimen, survived: distance, failed: null, cause: finding },
    notAtCondition: null,
  };
}
