import { afterAll, beforeAll, expect, test } from 'vitest';
import { PHONE, servePlayground, type Playground } from './openPlayground.ts';
import { walkScreens } from './walkScreens.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(() => playground?.close());

test.each([
  ['with what is worked out beside the page', true],
  ['without', false],
])(
  'every screen at 360 px, %s: nothing for axe in light and dark, nothing over the edge, too small or too fine',
  async (_, worksBeside) => {
    expect(await walkScreens(playground, PHONE, true, worksBeside)).toEqual([]);
  },
);
