import { counted } from '../quantity/format.ts';
import { valueOfSteps } from './channel-unit.ts';
import type { DeviationListing, Found } from './deviation-listing.ts';
import type { DrumPass } from './drum-pass.ts';
import { duration } from './duration.ts';
import { addSums, type ChannelSums, emptySums } from './frame.ts';
import type { FoldChannel } from './plan.ts';
import type { Stretch } from './stretches.ts';

/** Share of the minutes in which a channel must move for a standstill of its value to be suspect. */
const LIVELY = 0.5;
/** Values at the very top that make a saturation, not a coincidence. */
const SATURATED = 30;

/** Channels that say nothing: without a value, frozen, or at the end of their range. */
export function sensorDeviations({ ledger, plan }: DrumPass, listing: DeviationListing): void {
  const { watch } = ledger;
  for (const [c, channel] of plan.channels.entries()) {
    const missing = watch.missing[c]!;
    const sayMissing = (stretch: Stretch): Found =>
      at(
        stretch,
        `${channel.name} without a value in ${counted(stretch.rows, 'row')}, ${duration(stretch.time)}`,
      );
    listing.repeated(
      'DRUM-11',
      missing,
      sayMissing,
      `${counted(missing.rows, 'row')}, ${duration(missing.time)}`,
    );
    const frozen = watch.frozen[c]!;
    if (watch.moving[c]! >= LIVELY * watch.turningFrames) {
      const sayFrozen = (stretch: Stretch): Found =>
        at(
          stretch,
          `${channel.name} stood at ${said(stretch.value, channel)} to the last digit for ${duration(stretch.to - stretch.from)}`,
        );
      listing.repeated('DRUM-11', frozen, sayFrozen, duration(frozen.time));
    }
    const sums = emptySums();
    for (const block of ledger.blocks) addSums(sums, block.channels[c]!.sums);
    if (isSaturated(sums, channel.reference)) {
      const found = `${channel.name} is exactly ${said(sums.max, channel)}, its highest value, in ${counted(sums.atMax, 'row')}: the end of a range`;
      listing.once('DRUM-11', found, {}, { severity: 'note' });
    }
  }
}

/**
 * Whether more values lie at the very top than a normal spread leaves beyond it: beyond three standard deviations
 * 0.135 % of all (normal table).
 */
function isSaturated({ count, sum, squares, max, atMax }: ChannelSums, reference: number): boolean {
  if (count < SATURATED || atMax < SATURATED || atMax === count) return false;
  const mean = sum / count;
  const deviation = Math.sqrt(Math.max(0, squares / count - mean * mean));
  return max - reference - mean > 3 * deviation && atMax > 0.00135 * count;
}

function said(steps: number, channel: FoldChannel): string {
  return String(Number(valueOfSteps(steps, channel).toPrecision(12)));
}

function at(stretch: Stretch, found: string): Found {
  return { file: stretch.file, line: stretch.firstLine, found };
}
