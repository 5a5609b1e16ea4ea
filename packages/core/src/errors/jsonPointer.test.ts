import { expect, test } from 'vitest';
import { jsonPointer } from './jsonPointer.ts';

// RFC 6901, section 5: the examples of the standard.
test.each([
  [[], ''],
  [['foo'], '/foo'],
  [['foo', 0], '/foo/0'],
  [[''], '/'],
  [['a/b'], '/a~1b'],
  [['c%d'], '/c%d'],
  [['e^f'], '/e^f'],
  [['g|h'], '/g|h'],
  [['i\\j'], '/i\\j'],
  [['k"l'], '/k"l'],
  [[' '], '/ '],
  [['m~n'], '/m~0n'],
  [['~1'], '/~01'],
] as const)('%j is %s', (path, pointer) => {
  expect(jsonPointer(path)).toBe(pointer);
});
