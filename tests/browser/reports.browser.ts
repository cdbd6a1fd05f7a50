import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { html } from '../../src/reports/html/html.ts';
import { reportKinds } from '../../src/reports/report-formats.ts';
import { languages } from '../../src/reports/words/language.ts';
import { gallery } from '../reports/charts/invented.ts';
import { reportedTests } from '../reports/reported.ts';
import { drum, reportedDrums } from '../reports/reported-drum.ts';
import { studies } from '../reports/studies.ts';
import { misplaced, namesOfPictures, openBrowser, printedPages, show } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

/** A phone, a laptop, and the width between the margins of an A4 sheet, in CSS pixels. */
const WIDTHS = { phone: 360, laptop: 1280, A4: 688 } as const;

const HOSTILE = [
  '<script>alert(1)</script>',
  '](javascript:alert(1)) <img src=x onerror=alert(1)>',
  '\u202eevil\u2066 \u001b[31m\u0000',
  'W'.repeat(10_000),
  '"\'><svg onload=alert(1)>&amp;',
];
const names = {
  plain: (plain: string) => plain,
  hostile: (plain: string) => `${plain}${HOSTILE[plain.length % HOSTILE.length]}`,
} as const;

describe.each(Object.entries(languages))('pictures in %s', (_, language) => {
  describe.each(Object.entries(names))('with %s names', (_name, name) => {
    it.each([1, 1e9, 1e-9])('stand in the page without touching, values times %g', async (times) => {
      const figures = Object.values(gallery({ language, name, times })).filter((figure) => figure !== null);
      expect(figures.length).toBeGreaterThan(11);
      const text = html({
        language,
        kind: 'full',
        title: 'pictures',
        name: 'all',
        subtitle: '',
        blocks: figures.map((figure) => ({ kind: 'figure', figure })),
        end: 'end',
      });
      for (const width of Object.values(WIDTHS)) {
        const shown = await show(browser, text, width);
        expect(await misplaced(shown.page), `${width} px`).toEqual([]);
        expect(shown.complaints).toEqual([]);
        const pictures = await namesOfPictures(shown.page);
        expect(pictures).toHaveLength(figures.length);
        for (const picture of pictures) expect(picture).not.toBe('');
        await shown.close();
      }
    });
  });
});

const tests = [
  ...Object.entries(reportedTests),
  ...Object.entries(reportedDrums),
  ['dropped and on the drum', [...reportedTests.passing!, drum]] as const,
];
describe.each(tests)('the reports of a test that is %s', (_, reported) => {
  it.each(['page', 'full'] as const)('show and print well: %s', async (kind) => {
    for (const language of Object.values(languages)) {
      const document = reportKinds[kind](reported, language, '0.1.0');
      const text = html(document);
      expect(text.length).toBeLessThan(400_000);
      for (const width of Object.values(WIDTHS)) {
        const shown = await show(browser, text, width);
        expect(await misplaced(shown.page), `${language.code} ${width} px`).toEqual([]);
        expect(shown.complaints).toEqual([]);
        const pictures = await namesOfPictures(shown.page);
        expect(pictures).toHaveLength((text.match(/<svg|<img/g) ?? []).length);
        for (const picture of pictures) expect(picture).not.toBe('');
        if (kind === 'page' && width === WIDTHS.A4) expect(await printedPages(shown.page)).toBe(1);
        await shown.close();
      }
    }
  });
});

describe.each(Object.entries(studies))('%s', (_, document) => {
  it('shows well', async () => {
    for (const language of Object.values(languages)) {
      const text = html(document(language));
      for (const width of Object.values(WIDTHS)) {
        const shown = await show(browser, text, width);
        expect(await misplaced(shown.page), `${language.code} ${width} px`).toEqual([]);
        expect(shown.complaints).toEqual([]);
        const pictures = await namesOfPictures(shown.page);
        expect(pictures).toHaveLength((text.match(/<svg/g) ?? []).length);
        for (const picture of pictures) expect(picture).not.toBe('');
        await shown.close();
      }
    }
  });
});
