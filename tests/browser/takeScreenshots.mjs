// Pictures of the main screen for the documentation: node tests/browser/takeScreenshots.mjs, after `npm run build`.
// The case shown is an invented one (demo-07) after its eighth result.
import { mkdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';

const LARGEST_BYTES = 300_000;
const root = fileURLToPath(new URL('../../playground', import.meta.url));
const folder = `${root}/docs`;
mkdirSync(folder, { recursive: true });

const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
const browser = await chromium.launch(launchOptions());
try {
  for (const [size, viewport] of Object.entries({
    phone: { width: 360, height: 740 },
    desktop: { width: 1440, height: 850 },
  })) {
    for (const colorScheme of /** @type {const} */ (['light', 'dark'])) {
      const context = await browser.newContext({ viewport, colorScheme, reducedMotion: 'reduce', locale: 'en' });
      const page = await context.newPage();
      await page.goto(server.resolvedUrls?.local[0] ?? '');
      await page.getByRole('button', { name: 'Cases' }).click();
      const list = page.getByRole('heading', { name: 'Invented cases to replay' }).locator('xpath=..');
      await list.getByRole('listitem').nth(6).getByRole('button').click();
      for (let step = 0; step < 8; step += 1) await page.getByRole('button', { name: 'Next result' }).click();
      await page.getByText('8 of 13 recorded').waitFor();
      // what is worked out beside the page has settled
      await page.getByText(/From \d+ plausible models\./).waitFor({ timeout: 60_000 });
      await page.evaluate(() => {
        scrollTo(0, 0);
        if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      });
      await page.mouse.move(0, 0);
      const path = `${folder}/${size}-${colorScheme}.png`;
      await page.screenshot({ path });
      const { size: bytes } = statSync(path);
      if (bytes > LARGEST_BYTES) throw new RangeError(`${path}: ${bytes} bytes, at most ${LARGEST_BYTES}`);
      console.log(`${path.slice(root.length + 1)}: ${bytes} bytes`);
      await context.close();
    }
  }
} finally {
  await browser.close();
  await server.close();
}
