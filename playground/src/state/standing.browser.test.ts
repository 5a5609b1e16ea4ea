import { expect, test } from 'vitest';
import type { NextStep } from '@faultodds/core';
import type { SettledAdvice } from '@faultodds/core/planning';
import { fix, OPEN, takeAnswer } from './standing.ts';

const money = (amount: number) => ({ amount, currency: 'unit' });
const step = (test: string): NextStep => ({
  kind: 'test',
  test,
  price: money(10),
  minutes: 5,
  accessToOpen: [],
  accessToClose: [],
  cautions: [],
});
const one = step('one');
const answer = (best: NextStep, isSettled: boolean): SettledAdvice => ({
  best,
  expectedCost: money(100),
  lowerBound: money(50),
  oneStep: one,
  differs: best !== one,
  saving: money(12),
  others: [],
  steps: 12,
  isSettled,
});

test('the first settled answer is what stands; an answer on the way is not', () => {
  expect(takeAnswer(OPEN, answer(step('two'), false), one)).toEqual(OPEN);
  const stands = takeAnswer(OPEN, answer(step('two'), true), one);
  expect(stands).toMatchObject({ isOpen: false, settled: { best: { test: 'two' } } });
  expect(fix(stands)).toBe(stands);
});

test('after a second one step stands; what is better later stands beside it and replaces nothing', () => {
  const late = answer(step('two'), true);
  const stands = takeAnswer(fix(OPEN), late, one);
  expect(stands).toEqual({ isOpen: false, better: late });
  // and goes again when looking longer finds the same step after all
  const same = answer(one, true);
  expect(takeAnswer(stands, same, one)).toEqual({ isOpen: false, settled: same });
});

test('what several steps settled on is not replaced by a better one either', () => {
  const first = answer(step('two'), true);
  const stands = takeAnswer(OPEN, first, one);
  const later = answer(step('three'), true);
  expect(takeAnswer(stands, later, one)).toEqual({ isOpen: false, settled: first, better: later });
});
