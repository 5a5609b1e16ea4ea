import { expect, test } from 'vitest';
import { costsMore, firstAmongEquals, type Contender } from './firstAmongEquals.ts';

// gross value, price; best first
const contenders = (...list: readonly (readonly [gross: number, price: number])[]): readonly Contender[] =>
  list.map(([grossValue, price]) => ({ grossValue, netValue: grossValue - price }));

test('a quick look that pays goes before a dear test that saves little more', () => {
  const tests = contenders([123, 50], [86, 16], [60, 27]);
  expect(firstAmongEquals(tests, 1000, 0.03)).toBe(1);
  // where every unit counts, the best is the best
  expect(firstAmongEquals(tests, 1000, 0)).toBe(0);
});

test('not where beginning with it would cost more than counts as the same', () => {
  expect(firstAmongEquals(contenders([200, 50], [86, 16]), 1000, 0.03)).toBe(1); // at most its 16 are lost
  expect(firstAmongEquals(contenders([200, 50], [116, 46]), 1000, 0.03)).toBe(0); // 46 of 1000
  expect(firstAmongEquals(contenders([130, 50], [116, 46]), 1000, 0.03)).toBe(0); // the same, and worse for its price
});

test('nothing that does not pay, however cheap', () => {
  expect(firstAmongEquals(contenders([90, 50], [2, 3]), 1000, 0.03)).toBe(0);
  expect(firstAmongEquals(contenders([40, 50], [2, 3]), 1000, 0.03)).toBe(-1);
  expect(firstAmongEquals([], 1000, 0.03)).toBe(-1);
  expect(firstAmongEquals(contenders([1e-10, 0]), 1000, 0.03)).toBe(-1);
});

test('what costs nothing and tells something is first of all', () => {
  expect(firstAmongEquals(contenders([90, 10], [1, 0]), 1000, 0.03)).toBe(1);
});

test('beginning with a test costs at most what it costs', () => {
  const [best, cheap, poor] = contenders([120, 50], [60, 5], [80, 60]) as [Contender, Contender, Contender];
  expect(costsMore(best, best)).toBe(0);
  expect(costsMore(cheap, best)).toBe(5);
  expect(costsMore(poor, best)).toBe(50);
});
