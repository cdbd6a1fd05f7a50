import { type Dialect, PLAIN } from '../dialect.ts';
import type { ExportProfile } from '../export/profile.ts';
import type { TimeRule } from '../time/time-rule.ts';

/** How a drum log writes its rows: what a rig's profile may say about it beyond the header. Plain data, fit for a thread. */
export interface SampleDialect
  extends Pick<Dialect, 'encoding' | 'separator' | 'decimal' | 'thousands' | 'sentinels'> {
  /** False where nothing says what `1.250` is: such a number is an error then. */
  readonly isDecimalStated: boolean;
  /** ISO offset (`+01:00`, `Z`) of times that are written without one; null: such a time is an error. */
  readonly offset: string | null;
  /** How times are written where it is not ISO 8601 with its offset. */
  readonly time: WrittenTime | null;
  /** First cells of rows that sum up and are no samples. */
  readonly footer: readonly string[];
  /** Whether the rig writes what stands before the header again where it begins anew. */
  readonly restarts: boolean;
}

/** A rule for times by names, from which each thread makes its own reader. */
export type WrittenTime =
  | { readonly kind: 'clock'; readonly pattern: string; readonly zone: string | null }
  | { readonly kind: 'serial'; readonly base: 1900 | 1904; readonly zone: string }
  | { readonly kind: 'date-cells'; readonly zone: string }
  | { readonly kind: 'seconds'; readonly start: number | { readonly key: string } };

/** The plain form of a drum log, which needs no profile. */
export const PLAIN_SAMPLES: SampleDialect = {
  ...PLAIN,
  sentinels: ['NaN'],
  isDecimalStated: true,
  offset: null,
  time: null,
  footer: [],
  restarts: false,
};

/** The dialect that a rig's profile describes; the plain form without one. */
export function sampleDialect(profile: ExportProfile | null): SampleDialect {
  if (profile === null) return PLAIN_SAMPLES;
  const { dialect, isDecimalStated, time, footer, restarts } = profile;
  return {
    ...dialect,
    sentinels: [...PLAIN_SAMPLES.sentinels, ...dialect.sentinels],
    isDecimalStated,
    offset: null,
    time: time && writtenTime(time),
    footer,
    restarts,
  };
}

function writtenTime(rule: TimeRule): WrittenTime {
  switch (rule.kind) {
    case 'clock':
      return { kind: 'clock', pattern: rule.format.pattern, zone: rule.zone?.name ?? null };
    case 'serial':
      return { kind: 'serial', base: rule.base, zone: rule.zone.name };
    case 'date-cells':
      return { kind: 'date-cells', zone: rule.zone.name };
    case 'seconds':
      return { kind: 'seconds', start: rule.start };
  }
}
