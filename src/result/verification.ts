/** How a stored result stands to its inputs. */
export interface Verification {
  readonly result: string;
  readonly follows: boolean;
  /** Inputs that are no longer what the result was made from. */
  readonly changed: readonly { readonly role: string; readonly path: string }[];
  /** Where the recomputed result differs: the place in the document, what is stored, what comes out now. */
  readonly differences: readonly {
    readonly at: string;
    readonly stored: string;
    readonly recomputed: string;
  }[];
}
