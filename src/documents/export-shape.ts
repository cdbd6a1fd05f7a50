import { ENCODINGS } from '../logs/dialect.ts';
import { block, either, list, mapOf, optional } from './blocks.ts';
import { character, count, flag, measure, name, word } from './fields.ts';

const words = (description: string) =>
  either(name(description), list(name(description), description, 1), description);

const column = () =>
  either(
    name('Header of the column, as the rig writes it.'),
    block(
      {
        name: name('Header of the column, as the rig writes it, with or without its unit in brackets.'),
        unit: optional(name('Unit of the column, where its header and its row of units have none.')),
        ambient: optional(
          measure(
            'bar',
            'Air pressure to take off an absolute pressure; 0 bar says that the column is gauge.',
            {
              atLeast: 0,
            },
          ),
        ),
        sentinels: optional(words('What stands for no value in this column.')),
        pattern: optional(name('What an id looks like: # a digit, @ a letter, all else itself.')),
      },
      'Header of the column, and what it does not say.',
    ),
    'Header of the column, as the rig writes it.',
  );

const startShape = () =>
  either(
    name('Instant that the seconds count from: ISO 8601 with its offset.'),
    block({ key: name('The line before the header that states the instant.') }, 'Where the instant stands.'),
    'Instant that relative seconds count from.',
  );

/** The keys of a rig's `export` block. */
export const exportShape = () => ({
  separator: optional(character('What stands between two cells, such as ";"; a tab is "\\t".')),
  widths: optional(
    list(
      count('Characters of the column, blanks included.'),
      'Characters of each column, where the export has columns of fixed width and no separator.',
      1,
    ),
  ),
  decimal: optional(word(['.', ','], 'Decimal mark of the numbers.')),
  thousands: optional(
    word(['.', ',', ' ', "'", 'none'], 'Mark between groups of three digits; " " is any kind of space.'),
  ),
  encoding: optional(word(ENCODINGS, 'Code page of the file. A byte order mark may stand before it.')),
  sheet: optional(name('Sheet of a workbook (.xlsx) that has the log.')),
  preamble: optional(
    either(
      word(['until-header'], 'All lines until the one that has the columns.'),
      count('How many lines stand before the header.', 0),
      'Lines before the header, kept as metadata: a count, or until-header.',
    ),
  ),
  header: optional(
    list(
      word(['names', 'units', 'processing'], 'What one row of the header holds.'),
      'The rows of the header.',
      1,
    ),
  ),
  footer: optional(words('First cell of a row that sums up and is no drop; kept as metadata.')),
  columns: optional(mapOf(column(), 'Which column of the export holds which quantity.')),
  ignore: optional(words('Header of a column that is known and not read.')),
  outcomes: optional(
    block(
      {
        failed: optional(words('What the rig writes for a failure.')),
        survived: optional(words('What the rig writes for a survival.')),
        'not-evaluable': optional(words('What the rig writes where the outcome could not be told.')),
      },
      "The rig's words for the outcome of a drop.",
    ),
  ),
  valid: optional(
    block(
      {
        yes: optional(words('What the rig writes for a drop that counts; an empty cell counts too.')),
        no: optional(words('What the rig writes for a drop that does not count.')),
      },
      "The rig's words for the validity of a drop.",
    ),
  ),
  catcher: optional(
    block(
      {
        'in-time': optional(words('What the rig writes where its catcher caught the rebound.')),
        early: optional(words('What it writes where the catcher touched before the impact.')),
        missed: optional(words('What it writes where the rebound was not caught.')),
      },
      "The rig's words for what its rebound catcher did.",
    ),
  ),
  damages: optional(
    mapOf(
      words("The lab's words for this damage."),
      "The lab's words for damages, by the code that each means (with its zone: casing-cut@sidewall).",
    ),
  ),
  sentinels: optional(words('What stands for no value, in any column: -999, ---, NAN.')),
  time: optional(
    block(
      {
        format: name(
          'How times are written: YYYY YY MM M MMM DD D ddd hh h mm ss f AP Z, or serial-1900, serial-1904, seconds, date-cells.',
        ),
        zone: optional(name('Zone of the clock: Europe/Berlin, or a fixed offset such as +01:00.')),
        start: optional(startShape()),
        rebuild: optional(
          word(
            ['uptime'],
            'Take times from the seconds that the rig counts (columns: uptime) where its clock jumps: they are marked.',
          ),
        ),
      },
      'How the rig writes times.',
    ),
  ),
  restarts: optional(flag('Whether the rig writes a header again where it begins anew.')),
  counter: optional(
    word(['continues', 'restarts'], 'Whether the running number goes on over a restart, or begins at one.'),
  ),
  fingerprint: optional(words("Fingerprint of the rig's header; another rig's export is refused.")),
});
