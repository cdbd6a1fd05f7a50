import type { Findings } from './findings.ts';
import type { ImpactFields } from './impact-fields.ts';

/** One check over the fields of an impact protocol. */
export type Rule = (fields: ImpactFields, findings: Findings) => void;
