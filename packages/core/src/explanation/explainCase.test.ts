import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import type { Facts } from '../evidence/facts.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { explainCase } from './explainCase.ts';

const compiled = compileModel(parseModel(pumpModel()));
const facts: Facts = deepFreeze({
  context: { filter: 'fitted' },
  observations: [
    { kind: 'result', id: 'r1', test: 'hum', outcome: 'hums' },
    { kind: 'result', id: 'r2', test: 'vacuum', likelihood: { strong: 1, weak: 3 } },
    { kind: 'repair-tried', id: 'r3', repair: 'change-hose', cured: false },
    { kind: 'result', id: 'r4', test: 'vacuum', outcome: 'weak', faultActive: 'unknown' },
    { kind: 'result', id: 'r5', test: 'hum', outcome: 'silent', faultActive: 'no' },
    { kind: 'result', id: 'r6', test: 'filter-look', outcome: 'dirty' },
  ],
});
const explanation = deepFreeze(explainCase(compiled, facts));
const steps = explanation.observations;

test('every observation is explained in its order, from the belief before it to the belief after it', () => {
  expect(steps.map(({ observation }) => observation.id)).toEqual(['r1', 'r2', 'r3', 'r4', 'r5', 'r6']);
  expect(explanation.beliefs).toHaveLength(7);
  steps.forEach((step, at) => {
    const observations = facts.observations.slice(0, at + 1);
    expect(step.after).toEqual(beliefOf(compiled, { ...facts, observations }).posterior);
    expect(step.before).toEqual(explanation.beliefs[at]!.posterior);
  });
});

test('the first result, by hand', () => {
  // prior weights 400, 150, 250, 180 x 2 (a filter is fitted), 20; P(hums | cause) = P(turning) 0.9 + P(standing) 0.15
  const weights = { 'fuse-blown': 400, 'motor-worn': 150, 'hose-leak': 250, clogged: 360, 'not-listed': 20 };
  const turning = { 'fuse-blown': 0.02, 'motor-worn': 0.2, 'hose-leak': 0.95, clogged: 0.95, 'not-listed': 0.95 };
  const hums = (cause: keyof typeof turning): number => turning[cause] * 0.9 + (1 - turning[cause]) * 0.15;
  const total = 1180;
  const fuse = 400 * hums('fuse-blown');
  const rest = (Object.keys(weights) as (keyof typeof weights)[])
    .filter((cause) => cause !== 'fuse-blown')
    .reduce((sum, cause) => sum + weights[cause] * hums(cause), 0);
  const [first] = steps;
  expect(first!.before['fuse-blown']).toBeCloseTo(400 / total, 12);
  expect(first!.after['fuse-blown']).toBeCloseTo(fuse / (fuse + rest), 12);
  expect(first!.weightDecibans['fuse-blown']).toBeCloseTo(10 * Math.log10(fuse / rest / (400 / 780)), 10);
  for (const cause of Object.keys(turning) as (keyof typeof turning)[]) {
    expect(first!.likelihoodByCause[cause]).toBeCloseTo(hums(cause), 12);
  }
  expect(first!.movers[0]!.cause).toBe('fuse-blown');
});

test('the weights of all observations add up to the move from intake to now', () => {
  const [intake] = explanation.beliefs;
  const final = explanation.beliefs.at(-1)!;
  for (const { cause } of intake.ranking) {
    const odds = (p: number): number => p / (1 - p);
    const total = 10 * Math.log10(odds(final.posterior[cause]!) / odds(intake.posterior[cause]!));
    expect(steps.reduce((sum, step) => sum + step.weightDecibans[cause]!, 0)).toBeCloseTo(total, 8);
  }
});

test('the ranking without an observation is the ranking of a case in which it was never made', () => {
  steps.forEach((step, at) => {
    const without = beliefOf(compiled, { ...facts, observations: facts.observations.toSpliced(at, 1) });
    expect(step.rankingWithout).toHaveLength(without.ranking.length);
    for (const { cause, probability, prior } of step.rankingWithout) {
      expect(probability).toBeCloseTo(without.posterior[cause]!, 12);
      expect(prior).toBe(without.prior[cause]);
    }
  });
});

describe('order', () => {
  test('the first observation weighs what it weighs first, the last what it weighs last', () => {
    expect(steps[0]!.weightIfFirstDecibans).toEqual(steps[0]!.weightDecibans);
    expect(steps.at(-1)!.weightIfLastDecibans).toEqual(steps.at(-1)!.weightDecibans);
  });

  test('a second run of a test adds less than it would have added alone', () => {
    const again = explainCase(compiled, {
      context: {},
      observations: [
        { kind: 'result', id: 'a', test: 'vacuum', outcome: 'weak' },
        { kind: 'result', id: 'b', test: 'vacuum', outcome: 'weak' },
      ],
    });
    const second = again.observations[1]!;
    expect(second.weightDecibans['hose-leak']).toBeGreaterThan(0);
    expect(second.weightDecibans['hose-leak']).toBeLessThan(0.8 * second.weightIfFirstDecibans['hose-leak']!);
  });
});

test('a test run while the fault slept moves nothing and says so', () => {
  const asleep = steps[4]!;
  expect(asleep.movers).toEqual([]);
  for (const weight of Object.values(asleep.weightDecibans)) expect(weight).toBeCloseTo(0, 9);
  for (const likelihood of Object.values(asleep.likelihoodByCause)) expect(likelihood).toBeCloseTo(1, 9);
});

test('movers are the largest moves, largest first', () => {
  for (const { movers, before, after } of steps) {
    const moves = Object.keys(before)
      .map((cause) => Math.abs(after[cause]! - before[cause]!))
      .toSorted((a, b) => b - a);
    movers.forEach((mover, at) => expect(Math.abs(mover.after - mover.before)).toBeCloseTo(moves[at]!, 12));
  }
});

test('causes ruled out at intake appear nowhere', () => {
  const { observations, beliefs } = explainCase(compiled, {
    ...facts,
    context: { ...facts.context, 'suction-hose': 'none' },
  });
  expect(beliefs[0].ruledOut).toEqual(['hose-leak']);
  for (const { before, after, weightDecibans, likelihoodByCause, of1000 } of observations) {
    for (const record of [before, after, weightDecibans, likelihoodByCause, of1000.before, of1000.after]) {
      expect(record).not.toHaveProperty('hose-leak');
    }
  }
});

test('of 1000 engines, the counts sum to 1000 before and after', () => {
  for (const { of1000 } of steps) {
    for (const counts of [of1000.before, of1000.after]) {
      expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(1000);
    }
  }
});

test('a case without observations has a belief and nothing to explain', () => {
  const empty = explainCase(compiled, { context: {}, observations: [] });
  expect(empty.observations).toEqual([]);
  expect(empty.beliefs).toHaveLength(1);
});
