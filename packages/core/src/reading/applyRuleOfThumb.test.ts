import { expect, test } from 'vitest';
import type { RuleOfThumb } from '../model/readingModel.ts';
import { applyRuleOfThumb } from './applyRuleOfThumb.ts';

const rule = (limit: RuleOfThumb['limit']): RuleOfThumb => ({ text: 'rule', source: 'common-practice', limit });
const exposure = { amount: 1000, unit: 'firings' } as const;

test('counts that are all zero have no share, and no cylinder has most of them', () => {
  const reading = { kind: 'counts', measure: 'm', counts: { 1: 0, 3: 0 }, suspect: 3 } as const;
  const { verdict, value } = applyRuleOfThumb(rule({ kind: 'share-of-all', moreThan: 0.9 }), reading);
  expect([verdict, value]).toEqual(['not-computable', undefined]);
});

test.each([
  ['swapped', { suspect: 5, partner: 0, exposure }, { suspect: 0, partner: 0, exposure }],
  ['replaced', { suspect: 0, exposure }, { suspect: 0, exposure }],
])('no misfire with the part %s says nothing about where they went', (_, before, after) => {
  const { verdict } = applyRuleOfThumb(rule({ kind: 'most-counts' }), {
    kind: 'part-counts',
    measure: 'm',
    before,
    after,
  });
  expect(verdict).toBe('not-computable');
});

test('readings that are all zero have no lowest to highest', () => {
  const reading = { kind: 'per-cylinder', measure: 'm', values: { 1: 0, 3: 0 }, unit: 'bar', suspect: 3 } as const;
  const limit = { kind: 'lowest-to-highest', atLeast: 0.75 } as const;
  expect(applyRuleOfThumb(rule(limit), reading, 0, { 1: 0, 3: 0 }).verdict).toBe('not-computable');
});
