// Published check F2: four-stroke geometry, intervals of 13 CCR 1968.2 (e)(3).
import { expect, test } from 'vitest';
import { firingsOf } from './firingsOf.ts';
import { misfireShare } from './misfireShare.ts';

test.each([
  [3, 300, 1500, 100 / 3],
  [4, 400, 2000, 25],
  [5, 500, 2500, 20],
  [6, 600, 3000, 100 / 6],
  [8, 800, 4000, 12.5],
])(
  '%d cylinders: %d events in 200 revolutions, %d in 1000, one dead cylinder is %d %%',
  (cylinders, in200, in1000, dead) => {
    const share = misfireShare(500, 1000, cylinders); // every firing of one cylinder missed
    expect(share.eventsIn200Revolutions).toBe(in200);
    expect(share.eventsIn1000Revolutions).toBe(in1000);
    expect(share.percent).toBeCloseTo(dead, 12);
    expect(share.per200Revolutions).toBe(100);
    expect(share.per1000Revolutions).toBe(500);
  },
);

test('one per cent of 1000 revolutions of four cylinders is 20 misfires', () => {
  expect(misfireShare(20, 1000, 4).percent).toBeCloseTo(1, 12);
});

test('a cylinder fires once in two revolutions', () => {
  expect(firingsOf({ amount: 1000, unit: 'revolutions' })).toBe(500);
  expect(firingsOf({ amount: 1000, unit: 'firings' })).toBe(1000);
});
