/** What turns, and how long of each day: null where it is not stated. */
export interface DrumSetting {
  /** Diameter of the drum, m. */
  readonly diameter: number | null;
  /** Cleats on its circumference. */
  readonly cleats: number;
  /** Rolling circumference of the tyre, m. */
  readonly circumference: number | null;
  /** Hours of running a day, above 0, at most 24. */
  readonly duty: number;
  /** Milliseconds since 1970 at which the first day begins. */
  readonly begin: number | null;
}

/** One block, or a whole schedule, laid out beforehand. */
export interface PlannedBlock {
  readonly block: string;
  /** km. */
  readonly distance: number;
  /** km/h. */
  readonly speed: number;
  /** Of running. */
  readonly hours: number;
  /** Of the calendar, by the duty. */
  readonly days: number;
  /** Milliseconds since 1970 at which it ends. */
  readonly end: number | null;
  readonly drumRevolutions: number | null;
  /** 1/min. */
  readonly drumSpeed: number | null;
  readonly cleatHits: number | null;
  /** Hz, of a cleat's meeting the tyre. */
  readonly cleatFrequency: number | null;
  readonly tyreRevolutions: number | null;
}

/** A look at the tyres that the protocol asks for. */
export interface PlannedInspection {
  /** km. */
  readonly at: number;
  /** Of running. */
  readonly hours: number;
  /** Milliseconds since 1970. */
  readonly time: number | null;
}

/** A drum test laid out beforehand. */
export interface EndurancePlan {
  readonly protocol: { readonly id: string; readonly version: string; readonly title: string | null };
  readonly setting: DrumSetting;
  readonly blocks: readonly PlannedBlock[];
  readonly inspections: readonly PlannedInspection[];
  /** What the protocol asks beside its schedule, sentence by sentence. */
  readonly rules: readonly string[];
}
