import { spawnSync } from 'node:child_process';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { tirelab } from '../cli/command.ts';
import { GateLab } from '../cli/gate-lab.ts';

// JUnit XML held to both public schemas of it by xmllint, which knows nothing of tirelab.

const SCHEMAS = ['surefire-style', 'ant-style'] as const;

let lab: GateLab;
beforeEach(() => {
  lab = new GateLab();
});
afterEach(() => lab.remove());

function lint(xml: string, schema: (typeof SCHEMAS)[number]) {
  const { status, stderr } = spawnSync(
    'xmllint',
    ['--noout', '--schema', `tests/tools/schemas/${schema}.xsd`, '-'],
    {
      input: xml,
      encoding: 'utf8',
    },
  );
  return { status, stderr };
}

/** What an XPath finds in a text, as a string. */
function xpath(xml: string, path: string): string {
  return spawnSync('xmllint', ['--xpath', path, '-'], { input: xml, encoding: 'utf8' }).stdout.trim();
}

/** A repository in which every verdict, an unreadable run and names full of markup stand side by side. */
function everyVerdict(): void {
  lab.add('demo', 'demo-fail', 'demo-undecided');
  lab.edit('shared/specifications/trail-casing.yaml', (text) =>
    text
      .replace(/id: tail/, 'id: "t<a>il & \\"quotes\\""')
      .concat(
        '  - { id: life, protocol: drum-two-block@1.0.0, quantity: reliability, at: 5000 km, atLeast: 60 % }\n',
        '  - { id: height, protocol: pinch-up-down@9, quantity: medianFailureHeight, atLeast: 400 mm }\n',
        '  - { id: burst, external: accredited }\n',
      ),
  );
  lab.write(
    'waivers/w.yaml',
    'format: tirelab.waiver/1\nid: W\nscope: { specification: trail-casing@1.0.0, criterion: median, construction: C-115@1 }\nowner: o <&> o\nrole: quality\nreason: "a ]]> b"\nexpires: 2999-12-31\n',
  );
  lab.write('broken.yaml', 'format: tirelab.run/1\nid: "a<b"\nprotocol: "no\\u0007ne.yaml"\nlogs: [x.csv]\n');
}

describe('JUnit XML of the gate', () => {
  it.each(SCHEMAS)('is valid by the %s schema with every verdict and hostile names', async (schema) => {
    everyVerdict();
    const { out, status } = await tirelab(['gate', lab.folder, '--format', 'junit']);
    expect(status).toBe(3);
    expect(lint(out, schema)).toMatchObject({ status: 0 });
    for (const type of ['inconclusive', 'not-tested', 'invalid']) {
      expect(Number(xpath(out, `count(//failure[@type="${type}"])`)), type).toBeGreaterThan(0);
    }
    expect(xpath(out, 'count(//skipped)')).toBe('3');
    expect(xpath(out, 'count(//error)')).toBe('1');
    expect(xpath(out, 'string(//testcase[@name="median"]/system-out)')).toContain('waived until 2999-12-31');
    // What a counter at the top says is what stands below it.
    for (const [counter, element] of [
      ['tests', 'testcase'],
      ['failures', 'failure'],
      ['errors', 'error'],
    ]) {
      expect(xpath(out, `string(/testsuites/@${counter})`)).toBe(xpath(out, `count(//${element})`));
    }
    expect(xpath(out, 'count(//failure[normalize-space(.)=""])')).toBe('0');
  });

  it.each(SCHEMAS)('is valid by the %s schema where nothing was there to judge', async (schema) => {
    lab.remove('shared/specifications');
    const { out } = await tirelab(['gate', lab.folder, '--format', 'junit']);
    expect(lint(out, schema)).toMatchObject({ status: 0 });
  });

  it('is small enough and named well enough for the systems that drop twins', async () => {
    everyVerdict();
    const { out } = await tirelab(['gate', lab.folder, '--format', 'junit']);
    const all = [...out.matchAll(/<testcase name="([^"]*)" classname="([^"]*)"/gu)].map((match) =>
      match.slice(1).join('\n'),
    );
    expect(new Set(all).size).toBe(all.length);
    expect(Buffer.byteLength(out)).toBeLessThan(30e6);
  });

  it('would not pass with what the schemas forbid: they can refuse', async () => {
    lab.add('demo');
    const { out } = await tirelab(['gate', lab.folder, '--format', 'junit']);
    const odd: [string, (typeof SCHEMAS)[number]][] = [
      [out.replace('<testcase ', '<testcase file="a" '), 'surefire-style'],
      [out.replace(' time="0"', ' time="0.12345"'), 'surefire-style'],
      [out.replace('<testsuites ', '<testsuites skipped="0" '), 'ant-style'],
      [out.replace(/<failure [^>]*>/u, '<skipped message="x"/>$&'), 'ant-style'],
    ];
    for (const [xml, schema] of odd) expect(lint(xml, schema).status, xml.slice(0, 200)).not.toBe(0);
  });
});
