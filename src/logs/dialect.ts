/** Code pages that a rig may write in; each may begin with its byte order mark. */
export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'shift_jis', 'gbk'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/**
 * How a rig writes its export. What this names is everything that stands between bytes and cells: a rig's profile
 * fills in another one, and nothing downstream knows the difference.
 */
export interface Dialect {
  /** Code page of the bytes. */
  readonly encoding: Encoding;
  /** One character between cells. */
  readonly separator: string;
  /** Characters of each column, where columns are told by their place and nothing stands between them. */
  readonly widths?: readonly number[];
  readonly decimal: '.' | ',';
  /** What stands between groups of three digits before the decimal mark; null where numbers have no such mark. */
  readonly thousands: string | null;
  /** Cell texts that mean "no value" beside the empty cell: counted, never averaged. Numbers go by their value. */
  readonly sentinels: readonly string[];
}

/** The plain form, which needs no profile: comma-separated UTF-8 with a decimal point. */
export const PLAIN: Dialect = {
  encoding: 'utf-8',
  separator: ',',
  decimal: '.',
  thousands: null,
  sentinels: [],
};
