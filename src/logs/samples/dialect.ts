import { type Dialect, PLAIN } from '../dialect.ts';

/** How a drum log writes its rows: what a rig's profile may say about it beyond the header's names. */
export interface SampleDialect extends Pick<Dialect, 'separator' | 'decimal' | 'sentinels'> {
  /** ISO offset (`+01:00`, `Z`) of times that are written without one; null: such a time is an error. */
  readonly offset: string | null;
}

/** The plain form of a drum log, which needs no profile. */
export const PLAIN_SAMPLES: SampleDialect = { ...PLAIN, sentinels: ['NaN'], offset: null };
