import { quote } from '../problem/echo.ts';
import { didYouMean } from '../problem/suggest.ts';
import { enduranceProtocol } from './endurance-protocol.ts';
import { Findings, type YamlDocument } from './findings.ts';
import { impactProtocol } from './impact-protocol.ts';
import type { Protocol } from './kinds.ts';

const READERS = { impact: impactProtocol, endurance: enduranceProtocol };

/**
 * A protocol from its document: `kind` says which keys it has.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function protocol(document: YamlDocument): Protocol {
  const { kind } = document.value;
  if (kind === 'impact' || kind === 'endurance') return READERS[kind](document);
  const findings = new Findings(document);
  const expected = 'impact (a drop test) or endurance (a drum test)';
  if (kind === undefined) {
    findings.add(['kind'], 'missing-key', `the key "kind" is missing; add it: ${expected}`);
  } else {
    const found = typeof kind === 'string' ? quote(kind) : 'no word';
    const near = typeof kind === 'string' ? didYouMean(kind, Object.keys(READERS)) : '';
    findings.add(['kind'], 'unknown-word', `found ${found}, expected ${expected}${near}`);
  }
  findings.throwIfAny();
  throw new Error('unreachable: a finding was added');
}
