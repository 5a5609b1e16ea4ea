import { expect, test } from 'vitest';
import { spreadLabels } from './spreadLabels.ts';

const rooms = (count: number, room: number): number[] => Array.from({ length: count }, () => room);

test('labels that have room stay where they want to be', () => {
  expect(spreadLabels([20, 60, 100], rooms(3, 20), [0, 200])).toEqual([20, 60, 100]);
});

test('two labels that want the same place share the way', () => {
  expect(spreadLabels([50, 50], rooms(2, 20), [0, 200])).toEqual([40, 60]);
});

test('labels stay within the extent, in the order of their lines, whatever order they are given in', () => {
  const placed = spreadLabels([199, 198, 3, 197], rooms(4, 20), [0, 200]);
  expect(placed).toEqual([190, 170, 10, 150]);
});

test('a label of three lines gets its own room', () => {
  const placed = spreadLabels([50, 52, 54], [20, 60, 20], [0, 200]);
  expect(placed[1]! - placed[0]!).toBe(40);
  expect(placed[2]! - placed[1]!).toBe(40);
});

test('no two of many crowded labels overlap', () => {
  const wanted = [3, 5, 4, 180, 5, 6, 179, 90];
  const placed = [...spreadLabels(wanted, rooms(8, 24), [0, 200])].sort((a, b) => a - b);
  placed.slice(1).forEach((centre, at) => expect(centre - placed[at]!).toBeGreaterThanOrEqual(24 - 1e-9));
  expect(placed[0]).toBeGreaterThanOrEqual(12);
  expect(placed.at(-1)).toBeLessThanOrEqual(188);
});
