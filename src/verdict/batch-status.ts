/**
 * The exit status of a batch (CONTRACT: exit status) from those of its runs, 2 for one whose files could not be read: 1
 * where a criterion of any fails, else 3 where any is undecided or could not be read; 2 where none could.
 */
export function batchStatus(statuses: readonly (0 | 1 | 2 | 3)[]): 0 | 1 | 2 | 3 {
  if (statuses.includes(1)) return 1;
  if (statuses.length > 0 && statuses.every((status) => status === 2)) return 2;
  return statuses.some((status) => status !== 0) ? 3 : 0;
}
