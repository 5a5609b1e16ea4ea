import { describe, expect, test } from 'vitest';
import { editDistance } from './editDistance.ts';
import { findUnknownId } from './findUnknownId.ts';
import { nearestId } from './nearestId.ts';

describe('edit distance', () => {
  // Levenshtein V.I. (1966); "kitten" and "sitting", 3, is the example of many texts
  test.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['abc', '', 3],
    ['same', 'same', 0],
    ['coil', 'coll', 1],
  ])('%s to %s: %d', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
    expect(editDistance(b, a)).toBe(distance);
  });
});

describe('nearest id', () => {
  const ids = ['coil-swap', 'plug-swap', 'leak-down'];
  test('a slip of the pen is guessed', () => {
    expect(nearestId('coil-swop', ids)).toBe('coil-swap');
    expect(nearestId('leakdown', ids)).toBe('leak-down');
  });

  test('something else is not', () => {
    expect(nearestId('tea', ids)).toBeUndefined();
    expect(nearestId('', [])).toBeUndefined();
  });

  test('a word as long as a book is answered at once', () => {
    expect(nearestId('x'.repeat(1_000_000), ids)).toBeUndefined();
  });
});

test('an unknown id is one problem, a known one none', () => {
  const list = [{ id: 'hum' }, { id: 'vacuum' }];
  expect(findUnknownId('test', 'hum', list, '/test')).toEqual([]);
  expect(findUnknownId('test', 'vacum', list, '/observations/0/test', 'the-pump')).toEqual([
    {
      code: 'test-unknown',
      path: '/observations/0/test',
      message: `no test 'vacum' of 'the-pump'`,
      hint: `did you mean 'vacuum'?`,
      wording: { key: 'unknown', parts: { kind: 'test', id: 'vacum', of: 'the-pump', nearest: 'vacuum' } },
    },
  ]);
});
