// Draws the icons an installed page needs from public/icon.svg: node playground/drawIcons.mjs. Run it after changing the drawing.
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { launchOptions } from '../.tools/browser.mjs';

const folder = new URL('./public/', import.meta.url);
const drawing = readFileSync(new URL('icon.svg', folder), 'utf8');
const browser = await chromium.launch(launchOptions());
const page = await browser.newPage();
for (const { name, size, filled } of [
  { name: 'icon-192.png', size: 192, filled: false },
  { name: 'icon-512.png', size: 512, filled: false },
  // cut to any shape by the device: paper to the edge, the drawing within the inner four fifths
  { name: 'icon-maskable-512.png', size: 512, filled: true },
]) {
  await page.setViewportSize({ width: size, height: size });
  const inner = filled ? Math.round(size * 0.72) : size;
  await page.setContent(
    `<style>html{background:${filled ? '#f6f7f5' : 'transparent'}}body{margin:0;display:grid;place-items:center;height:${size}px}svg{width:${inner}px}</style>${drawing}`,
  );
  writeFileSync(new URL(name, folder), await page.screenshot({ omitBackground: !filled }));
}
await browser.close();
