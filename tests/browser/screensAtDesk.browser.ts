import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, replay, servePlayground, type Playground } from './openPlayground.ts';
import { walkScreens } from './walkScreens.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('every screen at a desk: nothing for axe in light and dark, nothing over the edge, too small or too fine', async () => {
  const { page, complaints } = await playground.open({ worksBeside: true, viewport: DESK, colorScheme: 'light' });
  await replay(page, 7, 8);
  expect(await walkScreens(page)).toEqual([]);
  expect(complaints).toEqual([]);
});
