/** A file of an archive, by which it is known again. */
export interface ArchivedFile {
  /** `result`, or the role that it has as the input of one. */
  readonly role: string;
  /** From the folder of the manifest, with `/`. */
  readonly path: string;
  readonly sha256: string;
  readonly bytes: number;
}

/** A part on a shelf. */
export interface ArchivedPart {
  readonly specimen: string;
  readonly part: string;
  readonly place: string;
  /** The last day on which it must be there. */
  readonly until: string;
}

/** What an archive has to keep, until when, and where: `tirelab.archive/1`. */
export interface ArchiveManifest {
  /** The last day on which the files must be there. */
  readonly until: string;
  readonly results: readonly {
    readonly path: string;
    readonly run: string | null;
    readonly protocol: string;
    readonly constructions: readonly string[];
    readonly verdict: string | null;
  }[];
  readonly files: readonly ArchivedFile[];
  readonly parts: readonly ArchivedPart[];
}

/** How an archive stands to its manifest. */
export interface ArchiveVerification {
  readonly manifest: string;
  /** Every file is there and has its hash. */
  readonly whole: boolean;
  readonly files: number;
  readonly missing: readonly { readonly role: string; readonly path: string }[];
  readonly changed: readonly { readonly role: string; readonly path: string }[];
  /** The day that was looked at. */
  readonly asOf: string;
  readonly until: string;
  /** Whether the files need be kept no longer. */
  readonly ended: boolean;
  /** Parts, and whether they need be kept no longer. */
  readonly parts: readonly (ArchivedPart & { readonly ended: boolean })[];
}
