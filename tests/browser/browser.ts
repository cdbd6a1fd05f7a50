import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';

const CANDIDATES = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];

/** Debian's Chromium; without it the lane fails with one line that says what is missing. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = CANDIDATES.find((path) => path !== undefined && existsSync(path));
  if (executablePath === undefined) {
    throw new Error(
      'test:browser needs Chromium: install the package "chromium", or set CHROMIUM to its path',
    );
  }
  return chromium.launch({ executablePath, args: ['--no-sandbox'] });
}

/** A report as a browser shows it, and all that the browser had to say about it. */
export interface Shown {
  readonly page: Page;
  /** Console messages, errors of the page, and requests for anything but the file itself. */
  readonly complaints: readonly string[];
  readonly close: () => Promise<void>;
}

/** Opens a text as a file of its own, in a window of the given width. */
export async function show(browser: Browser, html: string, width: number): Promise<Shown> {
  const folder = mkdtempSync(join(tmpdir(), 'tirelab-browser-'));
  const path = join(folder, 'report.html');
  writeFileSync(path, html);
  const own = pathToFileURL(path).href;
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('dialog', (dialog) => complaints.push(`dialog: ${dialog.message()}`));
  page.on('request', (request) => {
    if (request.url() !== own && !request.url().startsWith('data:image/'))
      complaints.push(`request: ${request.url()}`);
  });
  await page.goto(own);
  return {
    page,
    complaints,
    close: async () => {
      await page.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/**
 * What is wrong with where things stand: pictures beyond the page, texts of a picture that touch each other or leave it,
 * a page that must be scrolled sideways, boxes that are cut.
 */
export function misplaced(page: Page): Promise<string[]> {
  return page.evaluate(MISPLACED);
}

const MISPLACED = readFileSync(new URL('./misplaced.js', import.meta.url), 'utf8');

/** Names of the pictures in the accessibility tree. */
export async function namesOfPictures(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  await session.detach();
  return nodes
    .filter(({ role, ignored }) => !ignored && (role?.value === 'image' || role?.value === 'img'))
    .map(({ name }) => String(name?.value ?? ''));
}

/** Pages of the printed report. */
export async function printedPages(page: Page): Promise<number> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  return (pdf.toString('latin1').match(/\/Type\s*\/Page(?![s\w])/g) ?? []).length;
}
