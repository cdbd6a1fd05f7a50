import { describe, expect, it } from 'vitest';
import { marked, messagesOf, problemsOf, read } from './marked.ts';

const RIG = 'format: tirelab.rig/1\nid: drop-2\n';
const profile = (block: string) => read('rig', `${RIG}export: ${block}\n`).export!;

describe('an export block', () => {
  it('is the plain form where it says nothing', () => {
    expect(profile('{ encoding: utf-8 }')).toMatchObject({
      dialect: { separator: ',', decimal: '.', thousands: null, sentinels: [] },
      isDecimalStated: true,
      header: ['names'],
      restarts: false,
    });
  });

  it('leaves the decimal mark open where only the separator is another one', () => {
    expect(profile('{ separator: ";" }').isDecimalStated).toBe(false);
    expect(profile('{ separator: ";", decimal: "." }').isDecimalStated).toBe(true);
  });

  it('lets the rig mean something else by a word of the plain form', () => {
    const { outcomes } = profile('{ outcomes: { failed: survived, survived: failed } }');
    expect(outcomes!.get('survived')).toBe('failed');
    expect(outcomes!.get('failed')).toBe('survived');
  });

  it('reads columns in both ways of writing them', () => {
    const { columns } = profile(
      '{ columns: { height: h, pressure: { name: "p abs", unit: kPa, ambient: 1013 hPa, sentinels: ["-999"] }, "planned height": soll } }',
    );
    expect(columns.get('height')).toEqual({
      name: 'h',
      unit: null,
      ambient: null,
      pattern: null,
      sentinels: [],
    });
    expect(columns.get('pressure')).toEqual({
      name: 'p abs',
      unit: 'kPa',
      ambient: 1.013,
      pattern: null,
      sentinels: ['-999'],
    });
    expect([...columns.keys()]).toContain('planned height');
  });

  it.each([
    ['{ format: "DD.MM.YYYY hh:mm:ss", zone: Europe/Berlin }', 'clock'],
    ['{ format: "YYYY-MM-DD hh:mm:ss.f Z" }', 'clock'],
    ['{ format: serial-1904, zone: "+09:00" }', 'serial'],
    ['{ format: seconds, start: "2026-03-09T08:00:00Z" }', 'seconds'],
    ['{ format: seconds, start: { key: Start } }', 'seconds'],
    ['{ format: date-cells, zone: Z }', 'date-cells'],
  ])('knows the times %s', (time, kind) => {
    expect(profile(`{ time: ${time} }`).time).toMatchObject({ kind });
  });
});

describe('a profile that would read a file two ways', () => {
  it.each<[string, string, string]>([
    ['the decimal mark separates', '{ decimal: ▶"," }', 'two-ways'],
    ['the separator is the point of the plain form', '{ separator: ▶"." }', 'two-ways two-ways'],
    ['thousands and decimal mark are one', '{ separator: ";", decimal: ",", thousands: ▶"," }', 'two-ways'],
    ['thousands mark and separator are one', '{ thousands: ▶"," }', 'two-ways'],
    ['one word has two outcomes', '{ outcomes: { failed: [x], survived: ▶[o, x] } }', 'two-ways'],
    ['one word is valid and not', '{ valid: { yes: J, no: ▶J } }', 'two-ways'],
    ['one column holds two quantities', '{ columns: { height: h, "planned height": ▶h } }', 'two-ways'],
    ['a sentinel is an outcome', '{ outcomes: { failed: "---" }, sentinels: ▶"---" }', 'two-ways'],
    ['a sentinel is a word of validity', '{ valid: { no: "-" }, sentinels: ▶"-" }', 'two-ways'],
    ['widths and a separator tell columns apart', '{ separator: ";", widths: ▶[3, 4] }', 'two-ways'],
    ['one word is two damages', '{ damages: { bead-burp: x, rim-dent: ▶x } }', 'two-ways'],
    ['a damage that is none', '{ damages: { bead-brup: ▶x } }', 'unknown-damage'],
    ['a damage at no zone of a tyre', '{ damages: { "casing-cut@hub": ▶x } }', 'unknown-damage'],
    ['one word is two states of the catcher', '{ catcher: { early: x, missed: ▶x } }', 'two-ways'],
    ['a column that is read and ignored', '{ columns: { height: h }, ignore: ▶[h] }', 'two-ways'],
    [
      'times rebuilt from nothing',
      '{ time: { format: "YYYY-MM-DD hh:mm", zone: Z, rebuild: ▶uptime } }',
      'missing-key',
    ],
    ['a zone stands beside an offset', '{ time: { format: "YYYY-MM-DD hh:mm Z", zone: ▶Z } }', 'two-ways'],
    ['a date without its month', '{ time: { format: ▶"DD.YYYY hh:mm", zone: Z } }', 'bad-format'],
    ['a part twice', '{ time: { format: ▶"DD.DD.YYYY MM hh:mm", zone: Z } }', 'bad-format'],
    ['times without a zone', '{ time: ▶{ format: "YYYY-MM-DD hh:mm" } }', 'missing-key'],
    ['an unknown zone', '{ time: { format: "YYYY-MM-DD hh:mm", zone: ▶Europe/Nowhere } }', 'unknown-zone'],
    ['dates apart without a format', '{ columns: { date: ▶Datum, time: Zeit } }', 'missing-key'],
    ['seconds from nowhere', '{ time: ▶{ format: seconds } }', 'missing-key'],
    ['a unit of another dimension', '{ columns: { height: { name: h, unit: ▶bar } } }', 'wrong-unit'],
    ['a unit of a word', '{ columns: { outcome: { name: r, unit: ▶mm } } }', 'out-of-place'],
    ['an unknown quantity', '{ columns: { hieght: ▶h } }', 'unknown-quantity'],
    ['an unknown code page', '{ encoding: ▶latin-9 }', 'unknown-word'],
    ['two rows of names', '{ header: ▶[names, names] }', 'header-rows'],
  ])('%s', (_, block, codes) => {
    const all = codes.split(' ');
    const { text, expected } = marked(`${RIG}export: ${block}\n`, ...all);
    const extra = all.slice(1).map((code) => expected[0]!.replace(/ .*/, ` ${code}`));
    expect(problemsOf('rig', text)).toEqual([...expected, ...extra]);
  });
});

describe('a draft', () => {
  it('is refused with the keys that are still to settle, each at its place', () => {
    const text = `${RIG}export:\n  separator: ";"\n  decimal:\n  outcomes:\n    failed:\n    survived: [o]\n`;
    const found = messagesOf('rig', text);
    expect(found.map(({ line, column, code }) => `${line}:${column} ${code}`)).toEqual([
      '5:3 to-settle',
      '7:5 to-settle',
    ]);
    expect(found[0]!.message).toContain('export.decimal');
    expect(found[1]!.message).toContain('export.outcomes.failed');
  });
});
