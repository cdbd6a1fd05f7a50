import type { ImpactProtocol } from '../../src/documents/kinds.ts';
import { documentOf } from '../../src/documents/load.ts';
import { protocol } from '../../src/documents/protocol.ts';
import type { Kind } from './clean-test.ts';

const COMMON = `mass: 8.000 kg ± 0.5 %
pressure: 2.0 bar ± 0.05 bar
temperature: 23 °C ± 2 K
failure: loss of air within 60 s
mounting: { rimWidth: 25 mm, rimType: TC, tube: butyl, sealant: 0 ml, insert: none, torque: 15 Nm ± 2 Nm }
preparation: { conditioning: 3 h, age: 16 h }
leakCheck: { method: water-bath, hold: 60 s, loss: 0.1 bar }
rigCheck: daily
`;

const TEXTS: Readonly<Record<Kind, string>> = {
  'up-and-down': `format: tirelab.protocol/1
id: clean-up-down
version: 1.0.0
kind: impact
method: up-and-down
start: 575 mm
step: 25 mm
limits: { min: 100 mm, max: 1200 mm }
sites: { perSpecimen: 1, avoid: [0 deg ± 20 deg] }
stop: { drops: 30 }
${COMMON}`,
  'rising-height': `format: tirelab.protocol/1
id: clean-rising
version: 1.0.0
kind: impact
method: rising-height
start: 450 mm
step: 25 mm
limits: { min: 100 mm, max: 800 mm }
sites: { spacing: 20 deg, each: new-spot }
stop: { specimens: 10 }
${COMMON}`,
  session: `format: tirelab.protocol/1
id: clean-session
version: 1.0.0
kind: impact
method: up-and-down
start: 600 mm
step: 25 mm
limits: { min: 100 mm, max: 1200 mm }
sites: { perSpecimen: 1, avoid: [0 deg ± 20 deg] }
stop: { drops: 20 }
${COMMON}`,
};

/** The protocol of a clean test: its text, and what the reader makes of it. */
export function loadedProtocol(kind: Kind): { readonly protocol: ImpactProtocol; readonly text: string } {
  const text = TEXTS[kind];
  const read = protocol(documentOf(Buffer.from(text), 'protocol.yaml', 'protocol'));
  if (read.kind !== 'impact') throw new Error('a drop test was meant');
  return { protocol: read, text };
}
