import type { EnduranceBlock } from '../documents/kinds.ts';
import type { DrumSetting, PlannedBlock } from '../result/endurance-plan.ts';

/**
 * Distance, hours, revolutions and cleat hits of each block: d = v·t, revolutions d/(πD) of the drum and d/U of the tyre,
 * cleat frequency v/(πD) times the cleats (plain arithmetic). Ends are counted over the blocks before.
 */
export function layOut(schedule: readonly EnduranceBlock[], setting: DrumSetting): readonly PlannedBlock[] {
  let ran = 0;
  return schedule.map(({ block, distance, duration, speed }) => {
    const hours = distance === null ? duration! / 3600 : distance / speed.value;
    const km = distance ?? speed.value * hours;
    ran += hours;
    const around = setting.diameter === null ? null : Math.PI * setting.diameter;
    const drumRevolutions = around === null ? null : (1000 * km) / around;
    const perSecond = around === null ? null : speed.value / 3.6 / around;
    const hasCleats = setting.cleats > 0;
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

/** Running starts with each day and stops after the hours of duty. */
function endOf(begin: number, hours: number, duty: number): number {
  const full = Math.max(0, Math.ceil(hours / duty - 1e-9) - 1);
  return begin + full * 86_400_000 + (hours - full * duty) * 3_600_000;
}
