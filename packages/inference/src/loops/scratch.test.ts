import { expect, test } from 'vitest';
import { createScratch, release, takeZeros } from './scratch.ts';

test('what is taken is zeros, and stays its own until it is given back, however much is taken after it', () => {
  const scratch = createScratch();
  const tables = Array.from({ length: 40 }, (_, at) => {
    const table = takeZeros(scratch, 1000 * (at + 1));
    expect(table.every((value) => value === 0)).toBe(true);
    return table.fill(at + 1);
  });
  tables.forEach((table, at) => {
    expect(table.length).toBe(1000 * (at + 1));
    expect(table.every((value) => value === at + 1)).toBe(true);
  });
});

test('memory given back is used again, and is zeros again', () => {
  const scratch = createScratch();
  const first = takeZeros(scratch, 100).fill(7);
  release(scratch);
  const second = takeZeros(scratch, 50);
  expect(second.buffer).toBe(first.buffer);
  expect(second.every((value) => value === 0)).toBe(true);
});

test('very large tables are not kept', () => {
  const scratch = createScratch();
  const large = takeZeros(scratch, (1 << 18) + 1);
  expect(large.length).toBe((1 << 18) + 1);
  expect(scratch.chunk.length).toBe(0);
});
