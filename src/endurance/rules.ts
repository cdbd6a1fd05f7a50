/** What a drum log is measured with where protocol and rig say nothing: all common practice, no source. */
export interface LogRules {
  /** Seconds from sample to sample; null takes the median of the log's first thousand. */
  readonly interval: number | null;
  /** More than so many intervals between two samples are a gap. */
  readonly gapIntervals: number;
  /** km/h; up to it the drum stands. */
  readonly standstill: number;
  /** Share of the smallest set load below which the arm counts as lifted. */
  readonly lifted: number;
  /** km; a counter that gains more from one sample to the next has jumped. */
  readonly counterJump: number;
  /** Seconds that a turning channel may keep its value to the last digit. */
  readonly frozen: number;
  /** Seconds of standing from which a pause is an interruption (a cold restart, a flat spot under load). */
  readonly interruption: number;
  /** Interruptions that are a note only. */
  readonly interruptionsAllowed: number;
  /** Share by which counter, integral of speed and revolutions may differ. */
  readonly counterAgreement: number;
  readonly signs: SignRules;
}

/** From when on a channel shows what may be a failing tyre: all common practice, no source. */
export interface SignRules {
  /** Share of the pressure lost against the ten minutes before, and per hour. */
  readonly pressureLoss: number;
  readonly pressureLossPerHour: number;
  /** Share by which the load leaves its level. */
  readonly loadJump: number;
  /** mm by which the axle leaves its level. */
  readonly heightJump: number;
  /** How many times its level the vibration is. */
  readonly vibrationRise: number;
  /** K above the level; asked only after so many seconds of running, when the tyre is warm. */
  readonly temperatureRise: number;
  readonly warm: number;
}

export const LOG_RULES: LogRules = {
  interval: null,
  gapIntervals: 3,
  standstill: 0.5,
  lifted: 0.1,
  counterJump: 2,
  frozen: 600,
  interruption: 3600,
  interruptionsAllowed: 3,
  counterAgreement: 0.005,
  signs: {
    pressureLoss: 0.02,
    pressureLossPerHour: 0.1,
    loadJump: 0.1,
    heightJump: 3,
    vibrationRise: 2,
    temperatureRise: 10,
    warm: 3600,
  },
};
