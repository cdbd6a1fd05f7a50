import { Readable } from 'node:stream';
import { documentOf } from '../../src/documents/load.ts';
import { protocol } from '../../src/documents/protocol.ts';
import { amend } from '../../src/impact/amend.ts';
import { type Replay, replay } from '../../src/impact/replay/replay.ts';
import { readAmendments } from '../../src/logs/amendments.ts';
import { readChecks } from '../../src/logs/checks.ts';
import { readDropLog } from '../../src/logs/drops.ts';
import { readMountings } from '../../src/logs/mountings.ts';
import { readSpecimens } from '../../src/logs/specimens.ts';
import { energyScale } from '../../src/rig/energy.ts';
import type { WrittenTest } from './by-another-hand.ts';
import type { CleanTest, Table } from './clean-test.ts';
import { loadedProtocol } from './protocols.ts';

/** A table as the file that a lab would keep. */
export function csv({ columns, rows }: Table, tail = ''): string {
  const lines = rows.map((row) => columns.map((column) => row[column] ?? '').join(','));
  return `${[columns.join(','), ...lines].join('\n')}\n${tail}`;
}

/** Writes a test as files, reads them back and replays it: what `analyze` does up to the estimates. */
export async function analysed(test: CleanTest): Promise<Replay> {
  const source = (text: string) => Readable.from([Buffer.from(text)]);
  const { protocol: followed } = loadedProtocol(test.kind);
  const log = await readDropLog(source(csv(test.drops, test.tail)));
  const register = await readSpecimens(source(csv(test.specimens)));
  const mountings = await readMountings(source(csv(test.mountings)));
  const checks = await readChecks(source(csv(test.checks)));
  const journal =
    test.amendments.rows.length === 0 ? null : await readAmendments(source(csv(test.amendments)));
  const { drops, acted } = amend(log.drops, journal?.records ?? []);
  return replay({
    protocol: followed,
    rig: null,
    drops,
    columns: log.columns,
    specimens: register.specimens.map((row) => ({ ...row, file: 'register' })),
    constructions: [],
    scale: energyScale(followed, null, drops, log.columns),
    mountings: mountings.records,
    checks: checks.records,
    acted,
    unsaved: log.findings
      .filter(({ code }) => code === 'truncated-line')
      .map(({ message, line }) => ({ file: log.path, line, message })),
  });
}

/** The same for a test that is files already. */
export async function analysedFiles({ protocol: text, log: rows, specimens }: WrittenTest): Promise<Replay> {
  const source = (of: string) => Readable.from([Buffer.from(of)]);
  const read = protocol(documentOf(Buffer.from(text), 'protocol.yaml', 'protocol'));
  if (read.kind !== 'impact') throw new Error('a drop test was meant');
  const log = await readDropLog(source(rows));
  const register = await readSpecimens(source(specimens));
  return replay({
    protocol: read,
    rig: null,
    drops: log.drops,
    columns: log.columns,
    specimens: register.specimens,
    constructions: [],
    scale: energyScale(read, null, log.drops, log.columns),
  });
}
