import type { DrumStopRule, EnduranceProtocol } from '../documents/kinds.ts';
import { duration } from './duration.ts';

/** What a protocol asks beside its schedule, sentence by sentence. */
export function enduranceRules({ schedule, pauses, pressureRule, stop }: EnduranceProtocol): string[] {
  const ramped = schedule.filter(({ ramp }) => ramp != null);
  return [
    ...(pressureRule === 'capped'
      ? ['Pressure: set cold, then the valve is closed and nothing corrected while the test runs.']
      : []),
    ...(pressureRule === 'held' ? ['Pressure: held at its set value while the test runs.'] : []),
    ...ramped.map(({ block, ramp }) => `Block ${block}: ${duration(ramp! * 1000)} to reach speed and load.`),
    ...(pauses ? [`Pauses: at most ${pauses.allowed} of ${duration(pauses.from * 1000)} or more.`] : []),
    ...(stop ? [`Stop: ${stopsOf(stop).join(', ')}.`] : []),
  ];
}

function stopsOf({ pressureBelow, loadBelow, tyreAbove }: DrumStopRule): string[] {
  return [
    ...(pressureBelow === null ? [] : [`pressure below ${pressureBelow} bar`]),
    ...(loadBelow === null ? [] : [`load below ${loadBelow} N`]),
    ...(tyreAbove === null ? [] : [`tyre above ${tyreAbove} °C`]),
  ];
}
