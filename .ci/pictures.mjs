// Draws the pictures of the README anew, from the demo's reports in a real browser: npm run pictures
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { chromium } from 'playwright-core';

const DESPITE = ['--despite', 'day=one week', '--despite', 'mass=follows the cloth'];
const DEMOS = ['demo', 'demo-fail', 'demo-undecided'].map((name) => `fixtures/${name}/run.yaml`);

/** Each picture: the reports that it shows, and how. `from` is the heading that it begins at, `height` what is cut off. */
const PICTURES = {
  // The page as it is printed, the report's beginning as it is on a screen.
  page: { reports: [['report', DEMOS[0]]], media: 'print', width: 690 },
  full: { reports: [['report', '--kind', 'full', DEMOS[0]]], width: 780, height: 1120 },
  drum: {
    reports: [['report', '--kind', 'full', 'fixtures/drum-run/run.yaml']],
    width: 780,
    from: 'Results',
    height: 1560,
  },
  studies: {
    reports: [
      ['compare', ...DEMOS, ...DESPITE, '--format', 'html'],
      [
        ...['simulate', 'protocols/pinch-up-down.yaml', '--spec', 'shared/specifications/trail-casing.yaml'],
        ...['--medians', '36 J..60 J/20', '--spread', '4 J', '--tests', '4000', '--format', 'html'],
      ],
    ],
    width: 780,
    height: 780,
  },
};

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
mkdirSync('fixtures/reports', { recursive: true });
for (const [name, { reports, media = 'screen', width, from, height }] of Object.entries(PICTURES)) {
  const shots = [];
  for (const args of reports) {
    const { stdout } = spawnSync(process.execPath, ['bin/tirelab.js', ...args], {
      encoding: 'utf8',
      maxBuffer: 1e8,
    });
    const page = await browser.newPage({ viewport: { width, height: 600 } });
    await page.emulateMedia({ media });
    await page.setContent(stdout);
    const top =
      from === undefined ? 0 : (await page.locator('h2', { hasText: from }).first().boundingBox()).y - 8;
    const all = await page.evaluate(() => document.documentElement.scrollHeight);
    const clip = { x: 0, y: top, width, height: Math.min(height ?? all, all - top) };
    shots.push({ clip, png: await page.screenshot({ fullPage: true, clip }) });
    await page.close();
  }
  const sheet = await browser.newPage({ viewport: { width, height: 600 } });
  await sheet.setContent(
    `<body style="margin:0">${shots.map(({ png }) => `<img style="display:block" src="data:image/png;base64,${png.toString('base64')}">`).join('')}`,
  );
  await sheet.screenshot({ path: `fixtures/reports/${name}.png`, fullPage: true });
  await sheet.close();
}
await browser.close();
