import { expect, test } from 'vitest';
import { type PlotFrame, betweenFrames } from './plotFrame.ts';

const column = (id: string, x: number, a: number): PlotFrame['columns'][number] => ({ id, x, ys: { a }, others: a });
const before: PlotFrame = { width: 100, columns: [column('car', 25, 80), column('1', 75, 60)] };
const after: PlotFrame = { width: 100, columns: [column('car', 20, 80), column('1', 50, 60), column('2', 80, 10)] };

test('a new column grows out of the last one before it', () => {
  const at = betweenFrames(before, after);
  expect(at(0).columns[2]).toMatchObject({ id: '2', x: 75, ys: { a: 60 } });
  expect(at(0.5).columns[2]).toMatchObject({ x: 77.5, ys: { a: 35 } });
  expect(at(1)).toEqual(after);
});

test('a column that is gone is gone at once, the others move to where they belong', () => {
  const at = betweenFrames(after, before);
  expect(at(0).columns.map(({ id, x }) => `${id} ${x}`)).toEqual(['car 20', '1 50']);
  expect(at(1)).toEqual(before);
});

test('the first picture stands still', () => {
  expect(betweenFrames({ width: 100, columns: [] }, after)(0)).toEqual(after);
});
