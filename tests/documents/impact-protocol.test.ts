import { describe, expect, it } from 'vitest';
import { marked, messagesOf, problemsOf, read } from './marked.ts';

const HEAD = 'format: tirelab.protocol/1\nid: p\nversion: 1.10\nkind: impact\n';
const UP_DOWN = `${HEAD}method: up-and-down\nstart: 500 mm\nstep: 25 mm\n`;
const FIXED = `${HEAD}method: fixed-level\nlevels: [400 mm, 45 cm]\nperLevel: 12\n`;

describe('an impact protocol', () => {
  it('is read with its units', () => {
    const text = `${UP_DOWN}mass: 8.000 kg ± 0.5 %
gravity: 9.81 m/s2
limits: { min: 10 cm, max: 1.2 m }
pressure: 29 psi +- 1 psi
temperature: 23 °C ± 2 K
sites: { perSpecimen: 2, spacing: 90 deg, each: series-per-site, avoid: [0 deg ± 20 deg, 180 deg ± 5 deg], afterFailure: new-site }
stop: { drops: 20, rarer: 10, atMost: 40 }
distribution: logistic
confidence: 90 %
energy: kinetic
heightTolerance: 0.2 cm
`;
    const { source, ...protocol } = read('protocol', text);
    expect(protocol).toMatchObject({
      format: 'tirelab.protocol/1',
      id: 'p',
      version: '1.10',
      kind: 'impact',
      method: 'up-and-down',
      title: null,
      failure: null,
      start: 500,
      step: { kind: 'additive', size: 25 },
      levels: null,
      perLevel: null,
      mass: { value: 8, unit: 'kg', tolerance: { kind: 'relative', fraction: 0.005 } },
      gravity: { value: 9.81, tolerance: null },
      limits: { min: 100, max: 1200 },
      temperature: { value: 23, tolerance: { kind: 'absolute', value: 2 } },
      sites: {
        perSpecimen: 2,
        spacing: expect.closeTo(90, 10),
        each: 'series-per-site',
        avoid: [
          { center: 0, half: expect.closeTo(20, 10) },
          { center: expect.closeTo(180, 10), half: expect.closeTo(5, 10) },
        ],
      },
      afterFailure: 'new-site',
      stop: { drops: 20, rarer: 10, atMost: 40 },
      distribution: 'logistic',
      confidence: 0.9,
      energy: 'kinetic',
      heightTolerance: 2,
      defaults: [],
    });
    // 1 psi is 6894.757 Pa (NIST SP 811, appendix B.8).
    expect(protocol).toHaveProperty('pressure.value', expect.closeTo(29 * 0.06894757, 6));
    expect(source.bytes).toBe(Buffer.byteLength(text));
    expect(source.locate(['stop', 'rarer'])).toEqual({ line: 14, column: 27 });
  });

  it('says what it leaves out and what is taken instead', () => {
    const protocol = read('protocol', UP_DOWN);
    expect(protocol).toMatchObject({
      distribution: 'normal',
      confidence: 0.95,
      energy: 'potential',
      stop: null,
      heightTolerance: 1,
      afterFailure: 'retire',
      sites: { perSpecimen: 1, spacing: null, each: 'new-spot', avoid: [] },
    });
    expect(protocol.defaults.map((said) => said.split(':')[0])).toEqual([
      'distribution',
      'confidence',
      'energy',
      'gravity',
      'sites',
      'stop',
    ]);
  });

  it('hits a rising-height specimen as often as it takes, at a new spot each time', () => {
    const rising = read('protocol', UP_DOWN.replace('up-and-down', 'rising-height'));
    expect(rising).toHaveProperty('sites', { perSpecimen: null, spacing: null, each: 'new-spot', avoid: [] });
    expect(rising.defaults).toContain('sites: a new spot for every hit');
  });

  it('takes a ratio step, pressures by size, and fixed levels without a stop rule', () => {
    expect(read('protocol', UP_DOWN.replace('25 mm', '5 %'))).toHaveProperty('step', {
      kind: 'ratio',
      ratio: 0.05,
    });
    const bySize = read(
      'protocol',
      `${UP_DOWN}pressure: { "62-622": 1.6 bar ± 0.03 bar, 50-622: 2.0 bar }\n`,
    );
    expect(bySize).toHaveProperty(['pressure', '62-622', 'value'], 1.6);
    expect(bySize).toHaveProperty(['pressure', '50-622', 'tolerance'], null);
    const fixed = read('protocol', FIXED);
    expect(fixed).toMatchObject({ levels: [400, 450], perLevel: 12, start: null, step: null });
    expect(fixed.defaults.some((said) => said.startsWith('stop'))).toBe(false);
  });

  it('takes afterFailure at the top as well', () => {
    expect(read('protocol', `${UP_DOWN}afterFailure: new-site\n`)).toHaveProperty('afterFailure', 'new-site');
  });
});

describe('what is wrong with an impact protocol', () => {
  const replaced = (from: string, to: string): string => UP_DOWN.replace(from, to);
  it.each<[string, string, string[]]>([
    ['an unknown key', `${UP_DOWN}▶stpe: 5 mm\n`, ['unknown-key']],
    ['an unknown key in a block', `${UP_DOWN}limits: { ▶maxi: 900 mm }\n`, ['unknown-key']],
    ['a quantity without a unit', replaced('500 mm', '▶500'), ['bad-quantity']],
    ['a quantity of another dimension', replaced('500 mm', '▶500 kg'), ['bad-quantity']],
    ['a decimal comma', `${UP_DOWN}mass: ▶8,0 kg\n`, ['bad-quantity']],
    ['a tolerance of another dimension', `${UP_DOWN}pressure: ▶2 bar ± 5 mm\n`, ['bad-quantity']],
    ['a tolerance where none belongs', replaced('500 mm', '▶500 mm ± 1 mm'), ['bad-quantity']],
    ['a height of nought', replaced('500 mm', '▶0 mm'), ['bad-quantity']],
    ['a negative height', replaced('500 mm', '▶-500 mm'), ['bad-quantity']],
    ['a step of nought', replaced('25 mm', '▶0 mm'), ['bad-value']],
    ['a negative ratio', replaced('25 mm', '▶-5 %'), ['bad-value']],
    ['a mass of nought', `${UP_DOWN}mass: ▶0 kg\n`, ['bad-quantity']],
    ['an empty value', replaced(' 500 mm', '▶'), ['bad-quantity']],
    ['a map where a quantity belongs', replaced('500 mm', '▶{ mm: 500 }'), ['wrong-shape']],
    ['a list where a map belongs', `${UP_DOWN}stop: ▶[30]\n`, ['wrong-shape']],
    ['a text where a list belongs', `${UP_DOWN}sites: { avoid: ▶0 deg ± 20 deg }\n`, ['wrong-shape']],
    ['an unknown method', replaced('up-and-down', '▶up-and-dwn'), ['unknown-word']],
    ['an unknown kind', replaced('impact', '▶imapct'), ['unknown-word']],
    ['no kind', replaced('kind: impact\n', '').replace('format', '▶format'), ['missing-key']],
    ['no id', replaced('id: p\n', '').replace('format', '▶format'), ['missing-key']],
    ['an id with a control character', replaced('id: p', 'id: ▶"p\\e[31m"'), ['bad-text']],
    ['no start', replaced('start: 500 mm\n', '').replace('up-and-down', '▶up-and-down'), ['missing-key']],
    [
      'levels with a stepping method',
      `${UP_DOWN}▶levels: [400 mm]\n▶perLevel: 3\n`,
      ['key-not-of-method', 'key-not-of-method'],
    ],
    ['a start with fixed levels', `${FIXED}▶start: 400 mm\n`, ['key-not-of-method']],
    [
      'fixed levels without levels',
      FIXED.replace(/levels.*\n/, '').replace('fixed-level', '▶fixed-level'),
      ['missing-key'],
    ],
    ['levels that fall', FIXED.replace('45 cm', '▶300 mm'), ['levels-not-rising']],
    ['a level twice', FIXED.replace('45 cm', '▶40 cm'), ['levels-not-rising']],
    ['no levels in the list', FIXED.replace('[400 mm, 45 cm]', '▶[]'), ['too-few']],
    ['no drops at a level', FIXED.replace('12', '▶0'), ['bad-count']],
    [
      'a level beyond the limits',
      `${FIXED.replace('45 cm', '▶45 cm')}limits: { max: 440 mm }\n`,
      ['beyond-limits'],
    ],
    [
      'a start beyond the limits',
      `${replaced('500 mm', '▶500 mm')}limits: { min: 600 mm }\n`,
      ['beyond-limits'],
    ],
    [
      'limits that cross',
      `${UP_DOWN}limits: { min: 400 mm, max: ▶400 mm }\n`.replace('start: 500', 'start: ▶500'),
      ['beyond-limits', 'limits-not-ordered'],
    ],
    ['an empty stop', `${UP_DOWN}stop: ▶{}\n`, ['missing-key']],
    ['a stop after nought drops', `${UP_DOWN}stop: { drops: ▶0 }\n`, ['bad-count']],
    ['a count that is none', `${UP_DOWN}stop: { drops: ▶3.5 }\n`, ['bad-count']],
    ['rarer without drops', `${UP_DOWN}stop: { ▶rarer: 3 }\n`, ['missing-key']],
    ['atMost without rarer', `${UP_DOWN}stop: { drops: 3, ▶atMost: 5 }\n`, ['missing-key']],
    ['atMost below drops', `${UP_DOWN}stop: { drops: 9, rarer: 2, atMost: ▶5 }\n`, ['stop-not-ordered']],
    [
      'reversals of a series that has none',
      `${replaced('up-and-down', 'rising-height')}stop: { ▶reversals: 4 }\n`,
      ['key-not-of-method'],
    ],
    ['a confidence of one half', `${UP_DOWN}confidence: ▶50 %\n`, ['bad-quantity']],
    ['a confidence of one', `${UP_DOWN}confidence: ▶100 %\n`, ['bad-quantity']],
    ['a confidence without per cent', `${UP_DOWN}confidence: ▶0.95\n`, ['bad-quantity']],
    ['a stretch without its width', `${UP_DOWN}sites: { avoid: [▶0 deg] }\n`, ['bad-value']],
    [
      'more sites than go round',
      `${UP_DOWN}sites: { perSpecimen: ▶9, spacing: 45 deg }\n`,
      ['sites-do-not-fit'],
    ],
    [
      'afterFailure in two places',
      `${UP_DOWN}sites: { afterFailure: retire }\n▶afterFailure: new-site\n`,
      ['duplicate-key'],
    ],
    ['a pressure of one size without a unit', `${UP_DOWN}pressure: { "62-622": ▶1.6 }\n`, ['bad-quantity']],
    ['a pressure that is a list', `${UP_DOWN}pressure: ▶[2 bar]\n`, ['wrong-shape']],
  ])('%s', (_, text, codes) => {
    const { text: clean, expected } = marked(text, ...codes);
    expect(problemsOf('protocol', clean)).toEqual(expected);
    expect(expected.length).toBeGreaterThan(0);
  });

  it('is told all at once, in the order of the lines', () => {
    const { text, expected } = marked(
      `${HEAD}method: up-and-down
start: ▶500
step: ▶25 kg
▶mas: 8 kg
confidence: ▶95
stop: { drops: ▶many }
`,
      'bad-quantity',
      'bad-value',
      'unknown-key',
      'bad-quantity',
      'bad-count',
    );
    expect(problemsOf('protocol', text)).toEqual(expected);
  });

  it('names what was found, what was expected and what settles it', () => {
    const message = (text: string): string => messagesOf('protocol', text)[0]!.message;
    expect(message(`${UP_DOWN}stpe: 5 mm\n`)).toBe('found the unknown key "stpe"; did you mean "step"?');
    expect(message(replaced('500 mm', '500'))).toBe(
      'found "500" without a unit, expected one, such as "350 mm"',
    );
    expect(message(`${UP_DOWN}mass: 8,0 kg\n`)).toContain('decimal point');
    expect(message(replaced('up-and-down', 'up-and-dwn'))).toContain('did you mean "up-and-down"?');
    expect(message(`${UP_DOWN}stop: { drops: 0 }\n`)).toBe('found "0", expected a whole number, 1 or more');
    expect(message(`${UP_DOWN}confidence: 100 %\n`)).toBe('found 100 %, expected less than 100 %');
  });

  it('never lets a control character of the file through', () => {
    const text = `${UP_DOWN}"k\\e[2J": 1\ntitle: "a\\e[31mb"\nmethod2: "\\u202e"\n`;
    for (const { message } of messagesOf('protocol', text)) expect(message).not.toMatch(/[\x00-\x1f\u202e]/);
    expect(messagesOf('protocol', text)).toHaveLength(3);
  });
});
