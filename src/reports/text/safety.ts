import { type Page, paragraph } from './page.ts';

/** What never changes, wherever work at a rig is spoken of: the tool knows files, not the rig. */
const NOT_SEEN =
  'tirelab does not know the state of the rig and never says that it is safe to reach in: that is for the people at it to see.';
const PRESSURE =
  'Pressure: stay below the lower of the limits of tyre and rim, and do not inflate a tyre that was cut or ran flat without looking at it.';
const STANDARDS =
  'A calculation aid: it replaces neither ISO 4210, ISO 5775 and local rules nor an accredited test.';

/** Cautions where the work is, in our own words; common practice, no source. */
export const SAFETY = {
  /** Before a session at a drop rig. */
  drop: [
    'A raised mass: never reach under it unless it is pinned; pin it before turning or changing a tyre, keep the guard closed, and let nobody stand where it may rebound to.',
    'Springs, compressed air and a raised mass hold energy with the power off: lock them or let it out before touching.',
    PRESSURE,
    NOT_SEEN,
    STANDARDS,
  ],
  /** Between two drops. */
  nextDrop: [
    'tirelab does not know the state of the rig: never reach under a raised mass that is not pinned, and keep the pressure below the lower of the limits of tyre and rim.',
  ],
  /** Before a drum test, and while it runs. */
  drum: [
    'A turning drum: guard closed and interlocked, no gloves or loose hair near it; before looking at a tyre wait until it stands. Cleats throw what comes loose.',
    'Loaded arms hold energy with the power off. Tread and brake stay hot after a run; see to fresh air, and stop at smoke.',
    PRESSURE,
    NOT_SEEN,
    STANDARDS,
  ],
  /** At a rig that is measured. */
  rig: [NOT_SEEN],
} as const;

/** Cautions as a list. */
export function cautionList(page: Page, texts: readonly string[]): string[] {
  return texts.flatMap((text) => paragraph(page, `- ${text}`, 2, 4));
}
