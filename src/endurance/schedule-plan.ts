import type { EnduranceBlock } from '../documents/kinds.ts';
import type { DrumSetting, PlannedBlock, PlannedInspection } from '../result/endurance-plan.ts';
import { circumferenceOf } from './by-drum.ts';
import { hoursBetween } from './schedule-distances.ts';

/**
 * Distance, hours, revolutions and cleat hits of each block: d = v·t, revolutions d/(πD) of the drum and d/U of the tyre,
 * cleat frequency v/(πD) times the cleats (plain arithmetic). Ends are counted over the blocks before.
 */
export function layOut(schedule: readonly EnduranceBlock[], setting: DrumSetting): readonly PlannedBlock[] {
  let ran = 0;
  return schedule.map(({ block, distance, duration, speed, cleats }) => {
    const hours = distance === null ? duration! / 3600 : distance / speed.value;
    const km = distance ?? speed.value * hours;
    ran += hours;
    const around = setting.diameter === null ? null : circumferenceOf({ diameter: setting.diameter });
    const drumRevolutions = around === null ? null : (1000 * km) / around;
    const perSecond = around === null ? null : speed.value / 3.6 / around;
    const hasCleats = setting.cleats > 0 && cleats !== false;
    return {
      block,
      distance: km,
      speed: speed.value,
      hours,
      days: hours / setting.duty,
      end: setting.begin === null ? null : endOf(setting.begin, ran, setting.duty),
      drumRevolutions,
      drumSpeed: perSecond === null ? null : 60 * perSecond,
      cleatHits: drumRevolutions === null || !hasCleats ? null : drumRevolutions * setting.cleats,
      cleatFrequency: perSecond === null || !hasCleats ? null : perSecond * setting.cleats,
      tyreRevolutions: setting.circumference === null ? null : (1000 * km) / setting.circumference,
    };
  });
}

/** When the tyres are to be looked at. @param looks kilometres, ascending, before the end of the schedule */
export function layOutLooks(
  looks: readonly number[],
  blocks: readonly PlannedBlock[],
  { begin, duty }: DrumSetting,
): readonly PlannedInspection[] {
  return looks.map((at) => {
    const hours = hoursBetween(0, at, blocks)!;
    return { at, hours, time: begin === null ? null : endOf(begin, hours, duty) };
  });
}

/** Running starts with each day and stops after the hours of duty. */
function endOf(begin: number, hours: number, duty: number): number {
  const full = Math.max(0, Math.ceil(hours / duty - 1e-9) - 1);
  return begin + full * 86_400_000 + (hours - full * duty) * 3_600_000;
}
