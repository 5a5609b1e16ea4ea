import { expect, test } from 'vitest';
import { joinFrames } from './joinFrames.ts';

test('a first frame and its consecutive ones are one message of the length it states', () => {
  expect(joinFrames('7E8 10 0A 46 01 02 03 04 05\n7E8 21 06 07 08 09 AA AA AA')).toEqual([
    [0x46, 1, 2, 3, 4, 5, 6, 7, 8, 9],
  ]);
});

// was 'Maximum call stack size exceeded': every byte of a line was an argument of one call
test('a line of a million bytes is a line', () => {
  const [message] = joinFrames(`7E8 1F FF 46 01 02 03 04 05\n7E8 21 ${'00'.repeat(1_000_000)}`);
  expect(message).toHaveLength(0xfff);
});
