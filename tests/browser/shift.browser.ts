import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, PHONE, leaders, replay, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

for (const [size, viewport] of [
  ['a phone', PHONE],
  ['a desk', DESK],
] as const) {
  test(`the picture is taken back to any moment and to now again (${size})`, async () => {
    const { page, complaints } = await playground.open({ viewport });
    await replay(page, 7, 6);
    const slider = page.getByRole('slider', { name: 'Go back to any step' });
    const heading = (): Promise<string> => page.locator('.moment > h3').innerText();
    const latest = await heading();
    const now = await leaders(page);
    await slider.focus();
    for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowLeft');
    await expect.poll(heading).toMatch(/^3\. /);
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^3: .*Leading: /);
    expect(await page.locator('#shift figure .title').first().innerText()).toMatch(/^As it was then: 3/);
    expect(await leaders(page)).toEqual(now);
    await page.getByRole('button', { name: 'Back to now' }).click();
    await expect.poll(heading).toBe(latest);
    expect(complaints).toEqual([]);
  });
}

test('a result is compared with the ranking as it would be without it', async () => {
  const { page, complaints } = await playground.open();
  await replay(page, 7, 8);
  await page.getByLabel('Compare: without this result').check();
  const marks = page.locator('.rank-shift path.without');
  expect(await marks.count()).toBe(8);
  const lastDots = await page.locator('.rank-shift circle.focused').last().getAttribute('cy');
  const mark = await page.locator('.rank-shift path.without.focused').getAttribute('d');
  // taking it back for good puts the line where the mark stood
  const [, edge] = /^M[\d.]+ ([\d.]+)/.exec(mark!)!;
  expect(Math.abs(Number(edge) + 7 - Number(lastDots))).toBeGreaterThan(5);
  expect(complaints).toEqual([]);
});

test('lines move from state to state, and stand still for readers who ask for no motion', async () => {
  const path = '.rank-shift path.line.focused';
  for (const [reducedMotion, moves] of [
    ['no-preference', true],
    ['reduce', false],
  ] as const) {
    const { page } = await playground.open({ reducedMotion });
    await replay(page, 7, 3);
    // the clock of the page is moved by hand: how many states there are to see does not hang on how busy the machine is
    await page.clock.install();
    await page.clock.pauseAt(Date.now() + 60_000);
    const shape = (): Promise<string | null> => page.locator(path).getAttribute('d');
    const before = await shape();
    await page.getByRole('slider', { name: 'Go back to any step' }).focus();
    await page.keyboard.press('ArrowLeft');
    const seen = new Set<string | null>();
    for (let step = 0; step < 20; step += 1) {
      await page.clock.runFor(50);
      seen.add(await shape());
    }
    seen.delete(before);
    if (moves) expect(seen.size).toBeGreaterThan(3);
    else expect(seen.size).toBe(1);
  }
});
