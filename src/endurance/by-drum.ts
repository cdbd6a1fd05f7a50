import type { Drum, EnduranceProtocol } from '../documents/kinds.ts';
import { InputError } from '../problem/problem.ts';

/** Circumference of a drum, m: πD. */
export function circumferenceOf({ diameter }: Pick<Drum, 'diameter'>): number {
  return Math.PI * diameter;
}

/**
 * The protocol with a distance for each block that goes by revolutions of the drum: n·πD.
 *
 * @throws InputError where blocks go by revolutions and the drum is not known
 */
export function protocolOnDrum(protocol: EnduranceProtocol, drum: Drum | null): EnduranceProtocol {
  const counted = protocol.schedule.filter(({ revolutions }) => revolutions != null);
  if (counted.length === 0) return protocol;
  if (drum === null) {
    const { path, locate } = protocol.source;
    const place = protocol.schedule.indexOf(counted[0]!);
    const message =
      'found a block by revolutions and no drum, expected the diameter that makes a distance of them; name the rig, with its drum.diameter';
    const at = locate(['schedule', place, 'revolutions']);
    throw new InputError([{ file: path, ...at, code: 'drum-not-known', message }]);
  }
  const each = circumferenceOf(drum) / 1000;
  return {
    ...protocol,
    schedule: protocol.schedule.map((block) =>
      block.revolutions == null ? block : { ...block, distance: block.revolutions * each },
    ),
  };
}
