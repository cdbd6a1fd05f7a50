/** A line of text, and whether it is in the words of the record, which are English. */
export interface Line {
  readonly text: string;
  readonly isRecord?: boolean | undefined;
}
