/** Times before 2000 are seconds since a start: such a log has no calendar. ms since 1970. */
export const CLOCK_FROM = Date.UTC(2000, 0, 1);

/** `90 s`, `12.5 min`, `3.2 h`. */
export function duration(milliseconds: number): string {
  const seconds = milliseconds / 1000;
  if (Math.abs(seconds) < 120) return `${Number(seconds.toFixed(1))} s`;
  if (Math.abs(seconds) < 7200) return `${Number((seconds / 60).toFixed(1))} min`;
  return `${Number((seconds / 3600).toFixed(1))} h`;
}
