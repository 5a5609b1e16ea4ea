import { AxeBuilder } from '@axe-core/playwright';
import type { Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, PHONE, replay, servePlayground, type Playground } from './openPlayground.ts';
import { readDownload } from './readDownload.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

async function openReport(page: Page): Promise<void> {
  await replay(page, 7, 8);
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('button', { name: 'Report of this case' }).click();
  await page.locator('.report').waitFor();
}

async function saved(page: Page, name: string): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
  return download;
}

for (const [size, viewport, colorScheme] of [
  ['a phone, light', PHONE, 'light'],
  ['a desk, dark', DESK, 'dark'],
] as const) {
  test(`the report says what was done, found, advised and left undone (${size})`, async () => {
    const { page, complaints, strangers } = await playground.open({ viewport, colorScheme });
    await openReport(page);
    const [customer, technical] = await page.locator('.report .leaf').allInnerTexts();
    expect(customer).toMatch(/An invented case/);
    expect(customer).toMatch(/Most likely: /);
    expect(customer).toMatch(/Of 1000 engines like this one, with these results, about \d+ have this fault/);
    expect(customer).toMatch(/Injector already replaced[\s\S]*Misfire stays[\s\S]*units/);
    expect(customer).toMatch(/Total: [\d,]+ units/);
    expect(customer).toMatch(/For safety[\s\S]*vehicle maker's procedure/);
    for (const part of ['What was known about the car', 'Conclusion, and how certain', 'What was not done, and why'])
      expect(technical).toContain(part);
    expect(technical).toMatch(/Still worth their price: .*\(\d+ units\)/);
    expect(await page.locator('.report tbody').nth(1).locator('tr').count()).toBe(8);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.target}`)).toEqual([]);

    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
    expect([...complaints, ...strangers]).toEqual([]);
  });
}

test('on paper the report is two pages or more and nothing else', async () => {
  const { page } = await playground.open();
  await openReport(page);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print, or save as PDF' }).isVisible()).toBe(false);
  const pdf = await page.pdf({ format: 'A4' });
  const pages = pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(2);
  expect(pages).toBeLessThanOrEqual(7); // every caution in full
});

test('the saved report stands alone: no script, no other file, the same words', async () => {
  const { page } = await playground.open({ acceptDownloads: true });
  await openReport(page);
  const words = await page.locator('.report').innerText();
  const download = await saved(page, 'Save as a page (HTML)');
  expect(download.suggestedFilename()).toMatch(/-report\.html$/);
  const file = (await readDownload(download)).toString();
  expect(file).not.toMatch(/<script|<link|<img|url\(|@import/i);
  const alone = await page.context().newPage();
  const complaints: string[] = [];
  const asked: string[] = [];
  alone.on('console', (message) => complaints.push(message.text()));
  alone.on('request', (request) => asked.push(request.url()));
  await alone.setContent(file);
  expect((await alone.locator('.report').innerText()).replace(/\s+/g, ' ')).toBe(words.replace(/\s+/g, ' '));
  const line = await alone.locator('.report svg path[stroke-width="2.25"]').first().getAttribute('d');
  expect(line).toMatch(/^M/);
  expect([...complaints, ...asked]).toEqual([]);
});

test('how the ranking moved is saved as a drawing and as pixels, in the colours of the page', async () => {
  const { page, complaints } = await playground.open({ acceptDownloads: true });
  await replay(page, 7, 8);
  const svg = (await readDownload(await saved(page, 'Save the picture as SVG'))).toString();
  expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/);
  expect(svg).not.toMatch(/var\(|NaN|undefined|class=/);
  expect(svg).toContain('Injector already replaced');
  const png = await readDownload(await saved(page, 'Save the picture as PNG'));
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  // width and height stand at bytes 16 and 20: twice the drawing's own
  const [, width] = /width="(\d+)"/.exec(svg)!;
  expect(png.readUInt32BE(16)).toBe(2 * Number(width));
  const colours = await page.evaluate(
    async (address) => {
      const picture = new Image();
      picture.src = address;
      await picture.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [picture.width, picture.height];
      const brush = canvas.getContext('2d')!;
      brush.drawImage(picture, 0, 0);
      const { data } = brush.getImageData(0, 0, canvas.width, canvas.height);
      const found = new Set<number>();
      for (let at = 0; at < data.length; at += 4) found.add((data[at]! << 16) | (data[at + 1]! << 8) | data[at + 2]!);
      return found.size;
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  expect(colours).toBeGreaterThan(10); // an empty picture has one
  expect(complaints).toEqual([]);
});
