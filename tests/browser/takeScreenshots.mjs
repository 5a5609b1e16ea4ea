// Pictures of the main screens for the documentation: node tests/browser/takeScreenshots.mjs [screens, default all], after `npm run build`.
// The case shown is an invented one (demo-07) after its eighth result. The first screen is taken four ways, the others on a phone in
// light and at a desk in dark.
import { mkdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';

/** @typedef {import('playwright-core').Page} Page */
/** @typedef {{ name: string, reach: (page: Page) => Promise<unknown>, fourWays?: boolean }} Screen */

const LARGEST_BYTES = 300_000;
const SIZES = { phone: { width: 360, height: 740 }, desktop: { width: 1440, height: 850 } };
const WAYS = /** @type {const} */ ([
  ['phone', 'light'],
  ['desktop', 'dark'],
  ['phone', 'dark'],
  ['desktop', 'light'],
]);

/** @param {Page} page @param {string} name */
const press = (page, name) => page.getByRole('button', { name, exact: true }).first().click();
/** @param {Page} page @param {string} selector */
const toTop = (page, selector) =>
  page
    .locator(selector)
    .first()
    .evaluate((one) => one.scrollIntoView({ block: 'start' }));

/** @type {readonly Screen[]} */
const screens = [
  { name: 'case', fourWays: true, reach: (page) => page.evaluate(() => scrollTo(0, 0)) },
  { name: 'next', reach: (page) => toTop(page, '#next article') },
  { name: 'shift', reach: (page) => toTop(page, '#shift') },
  {
    name: 'plan',
    async reach(page) {
      await press(page, 'Look further ahead');
      await press(page, 'Compute the whole plan');
      await page.getByText(/on average until the repair is confirmed$/).waitFor();
      await page.waitForTimeout(10_000); // it gets better while it is looked for
      await press(page, 'Stop');
      await toTop(page, 'dialog[open] section:nth-of-type(2)');
    },
  },
  {
    name: 'numbers',
    async reach(page) {
      await press(page, 'Check the numbers');
      const slider = page.getByRole('slider').first();
      await slider.focus();
      for (let times = 0; times < 12; times += 1) await page.keyboard.press('ArrowLeft');
      await page.getByRole('region', { name: 'With these changes' }).waitFor();
    },
  },
  { name: 'cases', reach: (page) => press(page, 'Cases') },
  {
    name: 'report',
    async reach(page) {
      await press(page, 'Cases');
      await press(page, 'Report of this case');
      await page.locator('.report').waitFor();
    },
  },
];

const root = fileURLToPath(new URL('../../playground', import.meta.url));
const folder = `${root}/docs`;
mkdirSync(folder, { recursive: true });

const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
const browser = await chromium.launch(launchOptions());

/** @param {Screen} screen @param {(typeof WAYS)[number]} way */
async function take({ name, reach }, [size, colorScheme]) {
  const options = { viewport: SIZES[size], colorScheme, reducedMotion: /** @type {const} */ ('reduce'), locale: 'en' };
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await page.goto(server.resolvedUrls?.local[0] ?? '');
  await press(page, 'Cases');
  const list = page.getByRole('heading', { name: 'Invented cases to replay' }).locator('xpath=..');
  await list.getByRole('listitem').nth(6).getByRole('button').click();
  for (let step = 0; step < 8; step += 1) await press(page, 'Next result');
  await page.getByText('8 of 13 recorded').waitFor();
  // what is worked out beside the page has settled
  await page.getByText(/From \d+ plausible models\./).waitFor({ timeout: 60_000 });
  await reach(page);
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  await page.mouse.move(0, 0);
  await page.waitForTimeout(500);
  const path = `${folder}/${name}-${size}-${colorScheme}.png`;
  await page.screenshot({ path });
  const { size: bytes } = statSync(path);
  if (bytes > LARGEST_BYTES) throw new RangeError(`${path}: ${bytes} bytes, at most ${LARGEST_BYTES}`);
  console.log(`${path.slice(root.length + 1)}: ${bytes} bytes`);
  await context.close();
}

try {
  const asked = process.argv.slice(2);
  for (const screen of screens.filter(({ name }) => asked.length === 0 || asked.includes(name))) {
    for (const way of screen.fourWays ? WAYS : WAYS.slice(0, 2)) await take(screen, way);
  }
} finally {
  await browser.close();
  await server.close();
}
