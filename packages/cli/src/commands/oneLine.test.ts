import { expect, test } from 'vitest';
import { oneLine } from './oneLine.ts';

test.each([
  ['one line stays', 'cannot write it: disk full', 'cannot write it: disk full'],
  [
    'a break and the blanks about it are one blank',
    'row-not-one:\n  at /tests/0 \t\r\n\n  hint: 1',
    'row-not-one: at /tests/0 hint: 1',
  ],
  ['blanks within a line stay', 'a  b\nc', 'a  b c'],
  ['nothing stays nothing', ' \n\n ', ''],
])('%s', (_, text, line) => {
  expect(oneLine(text)).toBe(line);
});

// as a pattern of blanks, a break, blanks this looked at every blank once for every blank before it: 125,000,000,000 looks
test('half a million blanks are looked at once', () => {
  const blanks = ' '.repeat(500_000);
  expect(oneLine(`a${blanks}b`)).toBe(`a${blanks}b`);
});
