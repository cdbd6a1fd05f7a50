import { describe, expect, it } from 'vitest';
import { reportFormats, reportKinds } from '../../src/reports/report-formats.ts';
import { languages } from '../../src/reports/words/language.ts';
import { reported, reportedTests } from './reported.ts';
import { drum, reportedDrums } from './reported-drum.ts';
import { passing, undecided } from './results.ts';

const { en, de } = languages;
const cases = [...Object.entries(reportedTests), ...Object.entries(reportedDrums)].flatMap(([name, tests]) =>
  (['page', 'full'] as const).flatMap((kind) =>
    Object.values(languages).map((language) => ({ name, kind, language, tests })),
  ),
);

describe.each(cases)('$kind of a test that is $name, in $language.code', ({ kind, language, tests }) => {
  const document = () => reportKinds[kind](tests, language, '0.1.0');
  const html = reportFormats.html(document());
  const markdown = reportFormats.markdown(document());

  it('is the same bytes twice, and below 400 KB', () => {
    expect(reportFormats.html(document())).toBe(html);
    expect(reportFormats.markdown(document())).toBe(markdown);
    expect(Buffer.byteLength(html)).toBeLessThan(400_000);
  });

  it('loads, runs and links nothing', () => {
    expect(html).not.toMatch(/<(?:script|iframe|object|embed|link|form|a)\b/i);
    expect(html).not.toMatch(/\s(?:href|action|on\w+|style|srcset)=(?=["'])/i);
    for (const [, source] of html.matchAll(/\ssrc="([^"]*)"/g))
      expect(source).toMatch(/^data:image\/(?:png|jpeg);base64,[\w+/=]+$/);
    expect(html).toMatch(
      /<meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;; style-src &#39;sha256-/,
    );
    const style = /<style>([^<]*)<\/style>/.exec(html)![1]!;
    expect(style).not.toMatch(/@import|url\(/);
    expect(html.match(/<style>/g)).toHaveLength(1);
  });

  it('lets no control or direction character through', () => {
    for (const text of [html, markdown]) {
      expect(text).not.toMatch(
        /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/u,
      );
    }
  });

  it('has no two ids that are the same', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('lets nothing of Markdown or HTML be made of foreign text', () => {
    // Whatever could begin a link, a picture or an element stands behind a backslash; our own marks do not use them.
    const words = reportFormats.markdown(document(), 'words');
    expect(words).not.toMatch(/(?<!\\)(?:\\\\)*[<[\]]/);
    // Pictures are the only links, and lead to nowhere outside.
    const pictures = [...markdown.matchAll(/^!\[(?:[^\]\\]|\\.)*\]\[picture-\d+\]$/gm)];
    const sources = [
      ...markdown.matchAll(/^\[picture-\d+\]: data:image\/(?:svg\+xml|png|jpeg);base64,[\w+/=]+$/gm),
    ];
    expect(sources).toHaveLength(pictures.length);
    let rest = markdown;
    for (const [own] of [...pictures, ...sources]) rest = rest.replace(own, '');
    expect(rest).not.toMatch(/(?<!\\)(?:\\\\)*[<[\]]/);
    expect(markdown).not.toMatch(/https?:\/\//);
    // A cell that could open another would give its row more bars than the head has.
    for (const table of markdown.split('\n\n').filter((block) => block.startsWith('|'))) {
      const bars = table.split('\n').map((line) => line.match(/(?<!\\)\|/g)!.length);
      expect(new Set(bars).size, table.slice(0, 80)).toBe(1);
    }
  });

  it('ends with its end mark', () => {
    expect(markdown.trimEnd().split('\n').at(-1)).toMatch(
      language === en ? /^End of report / : /^Ende des Berichts /,
    );
  });
});

describe('the page', () => {
  it('says the finding in words, with its interval and the number of tyres, and no p value', () => {
    const text = reportFormats.markdown(reportKinds.page([reported(passing)], en, '0.1.0'));
    expect(text).toContain('**Half of C-114\\@2 tyres fail at about 40 J.**');
    expect(text).toContain('The 95 % interval is 39 to 42 J, from 30 drops on 30 tyres.');
    expect(text).not.toMatch(/\bp\s*[=<]/);
  });

  it('says the same in German, with German numbers', () => {
    const text = reportFormats.markdown(reportKinds.page([reported(passing)], de, '0.1.0'));
    expect(text).toContain('**Von Reifen C-114\\@2 versagt die Hälfte bei etwa 40 J.**');
    expect(text).toContain('mindestens 0,6');
    expect(text).not.toMatch(/\d\.\d (?:J|g|mm)\b/);
  });

  it('says that nothing is decided, and what would decide', () => {
    const text = reportFormats.markdown(reportKinds.page([reported(undecided)], en, '0.1.0'));
    expect(text).toContain('Verdict: no decision.');
    expect(text).toContain('how many more tyres would bring a decision cannot be reckoned');
  });

  it('never rounds a bound onto the limit that it misses', () => {
    const missed = {
      ...passing,
      verdict: 'inconclusive' as const,
      criteria: [
        {
          ...passing.criteria[0]!,
          limit: { atLeast: 45, unit: 'J' },
          estimate: 46.2,
          bounds: { lower: 44.998, upper: 47.4 },
          verdict: 'inconclusive' as const,
        },
      ],
    };
    const text = reportFormats.markdown(reportKinds.page([reported(missed)], en, '0.1.0'));
    expect(text).toContain('44.998 J');
  });
});

describe('the full report', () => {
  const full = (request: Parameters<typeof reported>[1]) =>
    reportFormats.markdown(reportKinds.full([reported(passing, request)], en, '0.1.0'));

  it('has every hash of a raw file, and the version of the tool', () => {
    const text = full({});
    for (const { sha256 } of passing.inputs) expect(text).toContain(sha256);
    expect(text).toContain('tirelab 0.1.0');
  });

  it('lists each item of 7.8 as where it stands or as missing', () => {
    const stated = full({});
    expect(stated).toContain('| who authorises the report | “Identification” |');
    const request = { ...reported(passing).request, authorised: null, customer: null };
    const missing = full({ request });
    expect(missing).toContain('| who authorises the report | not stated |');
    expect(missing).toContain('| customer and contact | not stated |');
    expect(missing).toContain('- **Authorised by:** *not stated*');
    // Title, laboratory, place, identification, customer, method, items, receipt, dates, issue, sampling, relation to
    // the items, results, departures, authorisation, external results; conditions, conformity, rule, uncertainty,
    // opinions, replacement (ISO/IEC 17025:2017, 7.8.2.1, 7.8.3, 7.8.6, 7.8.7, 7.8.8; from memory of its headings).
    const list = missing.slice(missing.indexOf('| item | stands |')).split('\n\n')[0]!;
    expect(list.split('\n')).toHaveLength(2 + 22);
  });

  it('shows a drop that was left out with its reason', () => {
    expect(full({})).toMatch(/\| 9 \| T-09 \| \d+ mm \| DROP-16, [^|]+\|/);
  });

  it('shows results with and without the drops left out, where the result has both', () => {
    const again = { ...passing.estimates[0]!, variant: 'with-unexplained-exclusions', value: 41.3 };
    const result = { ...passing, estimates: [...passing.estimates, again] };
    const text = reportFormats.markdown(reportKinds.full([reported(result)], en, '0.1.0'));
    expect(text).toMatch(/\| median failure energy, C-114\\@2 \| 40\.2 J [^|]+\| 41\.3 J /);
  });
});

describe('the report of a drum test', () => {
  const full = reportFormats.markdown(reportKinds.full([drum], en, '0.1.0'));

  it('has the ledger of the log, as the fixture was made: 10 km, of which some nine at the condition', () => {
    // fixtures/drum-run/README.md says how many kilometres were made to lie outside.
    expect(full).toMatch(/\| Σ \|\s+\| 10(?:\.0\d)? km \| 9\.1\d? km \| 0\.\d+ km/);
  });

  it('shows lives, wear and the channels over their time', () => {
    const html = reportFormats.html(reportKinds.full([drum], en, '0.1.0'));
    for (const title of [
      'Distance run by each tyre',
      'Wear of the tread',
      'On the drum: speed',
      'On the drum: load',
    ]) {
      expect(html).toContain(`>${title}</title>`);
    }
  });
});
