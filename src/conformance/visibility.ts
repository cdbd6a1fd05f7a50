/**
 * Where a departure shows.
 * - `column`: a column of the plain form;
 * - `further column`: one that few rigs write, under its own name or by a profile (`hits`, `catcher`, `rig`, …);
 * - `document`: a table or document that the run names: register, mountings, checks, amendments, specification;
 * - `comparison`: only several constructions side by side;
 * - `none`: not from data at all.
 */
export type Seen = 'column' | 'further column' | 'document' | 'comparison' | 'none';

export interface Visibility {
  readonly code: string;
  readonly seen: readonly Seen[];
  /** From what. */
  readonly from: string;
  /** What of it stays unseen; empty where nothing does. */
  readonly unseen: string;
}

/** One row of a table. */
export const visibilityRow = (
  code: string,
  seen: readonly Seen[],
  from: string,
  unseen = '',
): Visibility => ({ code, seen, from, unseen });
const row = visibilityRow;

/** For each departure of a drop test whether data can show it, and from what. `visibility.md` prints it. */
export const VISIBILITY: readonly Visibility[] = [
  row(
    'DROP-01',
    ['column'],
    'height against the rule, or against planned height',
    'a scale that reads wrong',
  ),
  row('DROP-02', ['column'], 'height from hit to hit of a rise'),
  row('DROP-03', ['column'], 'height from hit to hit of a rise'),
  row('DROP-04', ['column'], 'height and outcome of neighbouring drops'),
  row('DROP-05', ['column'], 'height of neighbouring drops'),
  row('DROP-06', ['column'], 'height of the first drop'),
  row('DROP-07', ['column'], 'outcome of the first hit of a rise'),
  row('DROP-08', ['column'], 'outcome at the highest level'),
  row('DROP-09', ['column'], 'outcomes of an up-and-down series'),
  row('DROP-10', ['column'], 'number of drops or specimens against the stop rule'),
  row('DROP-11', ['column', 'document'], 'mass against rig or protocol', 'a mass that nobody weighed'),
  row('DROP-12', ['column'], 'velocity against free fall from height'),
  row('DROP-13', ['column'], 'velocity against free fall from height'),
  row('DROP-14', ['column'], 'empty velocity'),
  row('DROP-15', ['column'], 'velocity against free fall over a day'),
  row('DROP-16', ['further column'], 'hits above one, catcher: missed', 'a rebound that no counter saw'),
  row('DROP-17', ['further column'], 'catcher: early', 'a touch that slows by less than DROP-12'),
  row('DROP-18', ['document'], 'diameter of the register, zero set of the mountings'),
  row('DROP-19', ['further column', 'document'], 'rig, or the rigs of the logs', 'wear that nobody noted'),
  row('DROP-20', ['document'], 'check: base', 'bolts between two looks'),
  row('DROP-21', ['column', 'document'], 'pressure against the protocol'),
  row('DROP-22', ['column'], 'pressure from hit to hit of a specimen'),
  row('DROP-23', ['further column'], 'set temperature against temperature'),
  row(
    'DROP-24',
    ['further column', 'document'],
    'gauge changes; due of check: gauge',
    'a gauge that drifts in date',
  ),
  row('DROP-25', ['column', 'document'], 'temperature against the protocol'),
  row('DROP-26', ['document'], 'conditioned from, conditioned to of the register', 'the climate of the room'),
  row('DROP-27', ['document'], 'cured of the register against the time of the first hit'),
  row('DROP-28', ['comparison'], 'cured of the register, between constructions'),
  row('DROP-29', ['document'], 'check: daily or reference against the first drop of its day'),
  row('DROP-30', ['document'], 'check: reference against its limits'),
  row('DROP-31', ['column'], 'site of a specimen'),
  row(
    'DROP-32',
    ['column'],
    'site of a specimen, avoided stretches of the protocol',
    'a joint that is not marked',
  ),
  row('DROP-33', ['column', 'document'], 'hits or sites of a specimen; history of the register'),
  row('DROP-34', ['column'], 'rows after a failure'),
  row('DROP-35', ['document'], 'tube of the mountings after a failure', 'a patch that nobody noted'),
  row('DROP-36', ['column', 'document'], 'damage: rim-dent or rim-crack; rim of the mountings'),
  row('DROP-37', ['document'], 'rim width, rim type of the mountings or register'),
  row('DROP-38', ['document'], 'tube material, tube batch of the mountings or register'),
  row('DROP-39', ['document'], 'sealant of the mountings or register'),
  row('DROP-40', ['document'], 'insert of the mountings or register'),
  row('DROP-41', ['column'], 'damage: bead-burp, bead-unseated'),
  row('DROP-42', ['column'], 'damage: tube-valve, tube-seam, rim-tape'),
  row('DROP-43', ['document'], 'an entry of the amendments for outcome'),
  row('DROP-44', ['column'], 'outcome empty or not-evaluable; damage against failureModes'),
  row('DROP-45', ['further column'], 'second reading, pressure after against outcome'),
  row(
    'DROP-46',
    ['further column'],
    'failure criterion, leak check change',
    'a criterion that is only in the heads',
  ),
  row('DROP-47', ['comparison'], 'order of the constructions'),
  row('DROP-48', ['comparison'], 'operator of the constructions'),
  row('DROP-49', ['column'], 'drop, and whether height and specimen go on from the drop before the gap'),
  row('DROP-50', ['column'], 'time between hits on a specimen'),
  row('DROP-51', ['column'], 'a last row cut short, NUL bytes', 'rows that were never begun: DROP-49'),
  row('DROP-52', ['document'], 'specimen against the register'),
  row('DROP-53', ['document'], 'mass, width, thickness, diameter of the register without scatter'),
  row('DROP-54', ['column'], 'valid: no without a reason that excuses', 'a row that was deleted: DROP-49'),
  row('DROP-55', ['further column', 'document'], 'protocol; version that a criterion rests on'),
  row('DROP-56', ['column'], 'drops beyond the stop rule', 'stopping early when it looks well: DROP-10'),
];

/**
 * A table as Markdown: what `visibility.md` holds, and `drum-visibility.md`.
 *
 * @param of whose rows they are
 */
export function visibilityMarkdown(
  titles: ReadonlyMap<string, { readonly title: string }>,
  of: { readonly rows: readonly Visibility[]; readonly test: 'drop' | 'drum' } = {
    rows: VISIBILITY,
    test: 'drop',
  },
): string {
  const head = ['code', 'departure', 'seen from', 'namely', 'not seen'];
  const cells = of.rows.map(({ code, seen, from, unseen }) => [
    code,
    titles.get(code)?.title ?? '',
    seen.join(', '),
    from,
    unseen,
  ]);
  const widths = head.map((_, i) => Math.max(...[head, ...cells].map((row) => row[i]!.length)));
  const line = (row: readonly string[]) => `| ${row.map((cell, i) => cell.padEnd(widths[i]!)).join(' | ')} |`;
  return [
    `# Which departures of a ${of.test} test data can show`,
    '',
    of.test === 'drop'
      ? 'Made from `visibility.ts` (`bench/mutator.ts --visibility`); a test holds the two together.'
      : 'Made from `drum-visibility.ts` (`bench/mutator.ts --drum-visibility`); a test holds the two together.',
    '',
    line(head),
    line(widths.map((width) => '-'.repeat(width))),
    ...cells.map(line),
    '',
  ].join('\n');
}
