import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, servePlayground, type Playground } from './openPlayground.ts';
import { walkScreens } from './walkScreens.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test('every screen at 360 px: nothing for axe in light and dark, nothing over the edge, too small or too fine', async () => {
  expect(await walkScreens(playground, PHONE, true)).toEqual([]);
});
