import { DAMAGES, type Damage, damagesIn } from '../../conformance/damage.ts';
import type { DeviationList } from '../../conformance/deviation-list.ts';
import type { ImpactProtocol } from '../../documents/kinds.ts';
import { quote } from '../../problem/echo.ts';
import { counted } from '../../quantity/format.ts';
import { raiseAt, type Visit } from './replayed.ts';

/**
 * Whether a failure is the one that the protocol counts. Where the damage says that bead (DROP-41), valve, tube seam
 * or rim tape (DROP-42) gave way and nothing of the tyre did, it is no failure of the tyre: a rise ends at the last
 * height survived, and a single look is not evaluable, since nobody knows what the tyre would have done.
 */
export function checkDamage(visit: Visit, protocol: ImpactProtocol, list: DeviationList): void {
  const { damage, outcome } = visit.drop;
  if (damage === null || outcome !== 'failed') return;
  const damages = damagesIn(damage);
  const modes = protocol.failureModes ?? null;
  const counts = ({ code, meaning }: Damage) =>
    modes === null ? meaning === 'tyre' || meaning === null : modes.includes(code);
  if (damages.some(counts)) return;
  const other = damages.find(({ meaning }) => meaning === 'bead' || meaning === 'other-part');
  if (other !== undefined) {
    const found = () => `failed by ${named(other)}, and nothing of the tyre gave way`;
    raiseAt(list, visit, other.meaning === 'bead' ? 'DROP-41' : 'DROP-42', found);
  } else if (modes !== null && damages.length > 0) {
    const criterion = () =>
      `failed by ${damages.map(named).join(' and ')}, and the protocol counts ${modes.join(', ')}`;
    raiseAt(list, visit, 'DROP-44', criterion);
  }
}

/** Sentences on damages that do not go with their outcome, and on words that are none of the vocabulary. */
export function damageNotes(visits: readonly Visit[]): string[] {
  const unknown = new Map<string, number>();
  const odd: number[] = [];
  for (const { drop } of visits) {
    if (drop.damage === null) continue;
    for (const { code, meaning } of damagesIn(drop.damage)) {
      if (meaning === null) unknown.set(code, (unknown.get(code) ?? 0) + 1);
      if (meaning === 'tyre' && drop.outcome === 'survived') odd.push(drop.line);
    }
  }
  const notes: string[] = [];
  if (unknown.size > 0) {
    const words = [...unknown].slice(0, 8).map(([code, count]) => `${quote(code, 24)} (${count})`);
    const more = unknown.size > words.length ? ` and ${unknown.size - words.length} more` : '';
    notes.push(
      `Damages that are none of the vocabulary, and taken as the tyre's where it failed: ${words.join(', ')}${more}.`,
    );
  }
  if (odd.length > 0) {
    const lines = odd.slice(0, 8).join(', ');
    notes.push(
      `${counted(odd.length, 'drop')} survived with a damage that is a failure elsewhere (line ${lines}${odd.length > 8 ? ', …' : ''}): look again.`,
    );
  }
  return notes;
}

function named({ code, zone }: Damage): string {
  const title = DAMAGES.get(code)?.title;
  return `${code}${zone === null ? '' : ` at the ${zone}`}${title === undefined ? '' : ` (${title})`}`;
}
