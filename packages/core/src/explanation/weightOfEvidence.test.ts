import { describe, expect, test } from 'vitest';
import { weightOfEvidence } from './weightOfEvidence.ts';

// Good, Michie & Timms 1945, General Report on Tunny, section 21 (g): a penny is double-headed with odds 1 to 10 000; each head
// has Bayes factor 2, "3 decibans"; twenty heads give 60 decibans and odds of about 100 to 1.
describe('the double-headed penny', () => {
  const belief = (odds: number) => ({ doubled: odds / (1 + odds), fair: 1 / (1 + odds) });

  test('one head is worth 3.0103 decibans for, and the same against the other', () => {
    const weight = weightOfEvidence(belief(1e-4), belief(2e-4));
    expect(weight['doubled']).toBeCloseTo(3.01029996, 8);
    expect(weight['fair']).toBeCloseTo(-3.01029996, 8);
  });

  test('twenty heads are worth 60.206 decibans and end at 0.99055', () => {
    const after = belief(1e-4 * 2 ** 20);
    expect(after.doubled).toBeCloseTo(0.990553347, 9);
    expect(weightOfEvidence(belief(1e-4), after)['doubled']).toBeCloseTo(60.2059991, 6);
  });
});

test('near certainty small rivals still count: no digits are lost in 1 - p', () => {
  const weight = weightOfEvidence({ a: 1 - 2e-17, b: 1e-17, c: 1e-17 }, { a: 1 - 1.1e-17, b: 1e-18, c: 1e-17 });
  expect(weight['b']).toBeCloseTo(-10, 6);
  expect(weight['a']).toBeCloseTo(10 * Math.log10(2 / 1.1), 6);
});

test('what cannot be compared is said without NaN', () => {
  expect(weightOfEvidence({ a: 1, b: 0 }, { a: 1, b: 0 })).toEqual({ a: 0 });
  expect(weightOfEvidence({ a: 0.5, b: 0.5 }, { a: 1, b: 0 })).toEqual({ a: Infinity, b: -Infinity });
});
