/**
 * How a rig writes its export. What this names is everything that stands between bytes and cells: a rig's profile
 * fills in another one, and nothing downstream knows the difference.
 */
export interface Dialect {
  /** Code page of the bytes. */
  readonly encoding: 'utf-8';
  /** One character between cells. */
  readonly separator: string;
  readonly decimal: '.' | ',';
}

/** The plain form, which needs no profile: comma-separated UTF-8 with a decimal point. */
export const PLAIN: Dialect = { encoding: 'utf-8', separator: ',', decimal: '.' };
