// Draws the pictures of the README anew, from the demo's reports in a real browser: npm run pictures
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { chromium } from 'playwright-core';

const KINDS = [
  // The page as it is printed, the report's beginning as it is on a screen.
  { kind: 'page', media: 'print', width: 690, fullPage: true },
  { kind: 'full', media: 'screen', width: 780, fullPage: false },
];

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
mkdirSync('fixtures/reports', { recursive: true });
for (const { kind, media, width, fullPage } of KINDS) {
  const { stdout } = spawnSync(
    process.execPath,
    ['bin/tirelab.js', 'report', '--kind', kind, 'fixtures/demo/run.yaml'],
    {
      encoding: 'utf8',
    },
  );
  const page = await browser.newPage({ viewport: { width, height: fullPage ? 600 : 1120 } });
  await page.emulateMedia({ media });
  await page.setContent(stdout);
  await page.screenshot({ path: `fixtures/reports/${kind}.png`, fullPage });
  await page.close();
}
await browser.close();
