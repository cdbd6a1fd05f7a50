import type { Drum, EnduranceProtocol } from '../documents/kinds.ts';
import { loadProtocol, loadRig } from '../documents/load.ts';
import { protocolOnDrum } from '../endurance/by-drum.ts';
import { inspectionsDue } from '../endurance/schedule-distances.ts';
import { layOut, layOutLooks } from '../endurance/schedule-plan.ts';
import { enduranceRules } from '../endurance/schedule-rules.ts';
import { instantOf } from '../logs/instant.ts';
import { InputError, type Problem } from '../problem/problem.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { EndurancePlan } from '../result/endurance-plan.ts';

/** What is asked of a drum test beforehand; texts as written on the command line. */
export interface EndurancePlanRequest {
  readonly drum: string | null;
  /** Null takes those of the rig's drum. */
  readonly cleats: number | null;
  /** File of the rig whose drum it is, where none is given by its diameter. */
  readonly rig: string | null;
  readonly circumference: string | null;
  readonly duty: string;
  readonly begin: string | null;
}

/** The protocol where it is of a drum test, null where it is of a drop test. @throws InputError with what is wrong with it */
export function enduranceProtocolAt(path: string): EnduranceProtocol | null {
  const protocol = loadProtocol({ path });
  return protocol.kind === 'endurance' ? protocol : null;
}

/**
 * Lays a drum test out beforehand.
 *
 * @throws InputError for a quantity or a time that is none
 */
export function planEndurance(protocol: EnduranceProtocol, asked: EndurancePlanRequest): EndurancePlan {
  const problems: Problem[] = [];
  const fail = (flag: string, message: string): null => {
    problems.push({ file: flag, line: null, column: null, code: 'bad-option', message });
    return null;
  };
  const positive = (flag: string, text: string | null, unit: string): number | null => {
    if (text === null) return null;
    const read = readQuantity(text, unit);
    if (!read.ok) return fail(flag, read.why);
    return read.value.value > 0 ? read.value.value : fail(flag, 'found nothing above nought, expected more');
  };
  const day = (text: string): number | null =>
    instantOf(/^\d{4}-\d\d-\d\d$/u.test(text) ? `${text}T00:00:00Z` : text) ??
    fail('--begin', 'expected a date such as 2026-03-02, or an ISO 8601 time with its offset');
  const duty = positive('--duty', asked.duty, 'h') ?? 24;
  if (duty > 24) fail('--duty', `found ${duty} h a day, expected at most 24 h`);
  const diameter = positive('--drum', asked.drum, 'mm');
  const circumference = positive('--circumference', asked.circumference, 'mm');
  const begin = asked.begin === null ? null : day(asked.begin);
  if (problems.length > 0) throw new InputError(problems);
  const drum = drumOf(diameter === null ? null : diameter / 1000, asked);
  const setting = {
    diameter: drum?.diameter ?? null,
    cleats: drum?.cleats ?? asked.cleats ?? 0,
    circumference: circumference === null ? null : circumference / 1000,
    duty,
    begin,
  };
  const { id, version, title, schedule } = protocolOnDrum(protocol, drum);
  const blocks = layOut(schedule, setting);
  const inspections = layOutLooks(inspectionsDue({ ...protocol, schedule }), blocks, setting);
  return { protocol: { id, version, title }, setting, blocks, inspections, rules: enduranceRules(protocol) };
}

/** The drum as it is stated, or that of the rig. */
function drumOf(diameter: number | null, { rig, cleats }: EndurancePlanRequest): Drum | null {
  if (diameter !== null) return { diameter, cleats: cleats ?? 0, positions: [] };
  const drum = rig === null ? null : (loadRig({ path: rig }).drum ?? null);
  return drum && { ...drum, cleats: cleats ?? drum.cleats };
}
