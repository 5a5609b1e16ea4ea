import { expect, test } from 'vitest';
import { bar } from './bar.ts';

test.each([
  [0.5, 4, true, '██  '],
  [1, 4, true, '████'],
  [0.53125, 4, true, '██▏ '],
  [0.0001, 4, true, '▏   '],
  [0, 4, true, '    '],
  [0.6, 4, false, '==- '],
  [0.0001, 4, false, '-   '],
])('%f of %i columns, unicode %s', (probability, width, unicode, drawn) => {
  expect(bar(probability, width, unicode)).toBe(drawn);
});
