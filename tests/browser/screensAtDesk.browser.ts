import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, servePlayground, type Playground } from './openPlayground.ts';
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
  'every screen at a desk, %s: nothing for axe, nothing over the edge, too small or too fine',
  async (_, worksBeside) => {
    // the colours are those of the phone, where both themes are looked at
    expect(await walkScreens(playground, DESK, false, worksBeside)).toEqual([]);
  },
);
