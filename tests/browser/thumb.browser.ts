import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('a result entered by thumb moves nothing under the eyes of the reader', async () => {
  const { page, complaints } = await playground.open(
    { worksBeside: true, viewport: PHONE, hasTouch: true, isMobile: true },
    () => {
      const seen = { shift: 0 };
      Object.assign(globalThis, { seen });
      // by the definition of the measure what moves within half a second of a tap was asked for
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean })[])
          if (!entry.hadRecentInput) seen.shift += entry.value;
      }).observe({ type: 'layout-shift', buffered: true });
    },
  );
  const shift = (): Promise<number> =>
    page.evaluate(() => (Reflect.get(globalThis, 'seen') as { shift: number }).shift);
  await page.getByText(/^From 400 plausible models/).waitFor();
  await page.getByRole('button', { name: 'Next', exact: true }).tap();
  for (let result = 0; result < 2; result += 1) {
    await page.locator('#next article .futures button').last().tap();
    // what is worked out beside the page has come in
    await page.getByText(/^From 400 plausible models/).waitFor();
    await page.getByRole('button', { name: 'Next', exact: true }).tap();
  }
  expect(await shift()).toBeLessThan(0.01);
  expect(complaints).toEqual([]);
});
