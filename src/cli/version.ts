declare const TIRELAB_VERSION: string | undefined;

/** The package's version: put in by the build, so that no file is read for it at start. */
export const VERSION = typeof TIRELAB_VERSION === 'string' ? TIRELAB_VERSION : '0.0.0-source';
