import type { ImpactProtocol, Rig, Source, Specification } from '../documents/kinds.ts';
import { simulatedRuleFor } from '../impact/rules/method-rules.ts';

/** Documents without what cannot be handed to a thread, and with what energies are made of. */
export interface Design {
  readonly protocol: ImpactProtocol;
  readonly rig: Rig | null;
  /** Criteria that this protocol gives evidence for; null where nothing is judged. */
  readonly specification: Specification | null;
  /** J for one unit of what the rule moves: for a mm of height, mass · gravity / 1000. */
  readonly energyPerLevel: number;
}

/** A document's place without its reader: functions do not cross over to a thread. */
type Bare = Omit<Source, 'locate'>;

/** The design as it is posted to a thread. */
export interface PostedDesign extends Omit<Design, 'protocol' | 'rig' | 'specification'> {
  readonly protocol: Omit<ImpactProtocol, 'source'> & { readonly source: Bare };
  readonly rig: (Omit<Rig, 'source'> & { readonly source: Bare }) | null;
  readonly specification: (Omit<Specification, 'source'> & { readonly source: Bare }) | null;
  /** The same for equal designs: their documents as text. */
  readonly key: string;
}

export function posted({ protocol, rig, specification, energyPerLevel }: Design): PostedDesign {
  const bare = ({ path, sha256, bytes }: Bare): Bare => ({ path, sha256, bytes });
  const strip = <Kind extends { readonly source: Source }>(
    document: Kind,
  ): Omit<Kind, 'source'> & { readonly source: Bare } => ({ ...document, source: bare(document.source) });
  const documents = {
    protocol: strip(protocol),
    rig: rig && { ...strip(rig), export: null },
    specification: specification && strip(specification),
    energyPerLevel,
  };
  return { ...documents, key: JSON.stringify(documents) };
}

/** The design on the other side; its documents were found valid before, so that no place of them is asked for. */
export function received({ protocol, rig, specification, energyPerLevel }: PostedDesign): Design {
  const placed = <Kind extends { readonly source: Bare }>(document: Kind) => ({
    ...document,
    source: { ...document.source, locate: () => ({ line: 1, column: 1 }) },
  });
  return {
    protocol: placed(protocol),
    rig: rig && { ...placed(rig), export: null },
    specification: specification && placed(specification),
    energyPerLevel,
  };
}

/** The rule of the design's protocol on its rig. */
export function ruleOf({ protocol, rig }: Design): ReturnType<typeof simulatedRuleFor> {
  return simulatedRuleFor(protocol, rig);
}
