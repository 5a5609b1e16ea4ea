import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallModel, type SmallModel } from '../../../../tests/fixtures/smallModel.ts';
import type { Observation } from '../evidence/observation.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { decidingTests } from './decidingTests.ts';
import { advise } from './advise.ts';
import { whatWouldItTake, type CostlyStep, type WhatItTakesOptions, type WhatItTakes } from './whatWouldItTake.ts';

const OPEN: CostlyStep = { kind: 'access', access: 'lid' };

/** An inside fault behind a lid that takes an hour, an outside one that costs 30, and two tests outside. */
function lidModel(inside: number, looks: SmallModel['tests'] = undefined): SmallModel {
  return {
    causes: { inside, outside: 1 - inside },
    access: { lid: { minutes: 60 } },
    labourPerHour: 100,
    tests: looks ?? {
      listen: { p: { inside: { knock: 0.8, quiet: 0.2 }, else: { knock: 0.1, quiet: 0.9 } }, price: 12 },
      smell: { p: { inside: { oil: 0.95, none: 0.05 }, else: { oil: 0.05, none: 0.95 } }, price: 40 },
    },
    repairs: {
      'mend-inside': { cures: { inside: 1 }, minutes: 70, parts: 20, access: ['lid'] },
      'mend-outside': { cures: { outside: 1 }, parts: 30 },
    },
    referralFee: 400,
  };
}
function takes(
  inside: number,
  more: {
    looks?: SmallModel['tests'];
    observations?: readonly Observation[];
    openAccess?: readonly string[];
    step?: CostlyStep;
    options?: WhatItTakesOptions;
  } = {},
): WhatItTakes {
  const compiled = compileModel(smallModel(lidModel(inside, more.looks)));
  const belief = beliefOf(compiled, { context: {}, observations: more.observations ?? [] });
  return whatWouldItTake(compiled, belief, { openAccess: more.openAccess ?? [] }, more.step ?? OPEN, more.options);
}

describe('what it would take to open the lid', () => {
  test('is nothing when it is open already', () => {
    expect(takes(0.2, { openAccess: ['lid'] })).toMatchObject({ status: 'already-open', tests: undefined });
  });

  test('is out of reach when no cause behind it is possible, or its repair has failed for sure', () => {
    const failed: Observation = { kind: 'repair-tried', id: 'r', repair: 'mend-inside', cured: false };
    expect(takes(0)).toMatchObject({ status: 'impossible', probability: 0, threshold: undefined, tests: undefined });
    expect(takes(0.5, { observations: [failed] })).toMatchObject({ status: 'impossible', probability: 0 });
    expect(takes(0.5, { observations: [failed], step: { kind: 'repair', repair: 'mend-inside' } }).status).toBe(
      'impossible',
    );
  });

  test('is nothing when opening is the best step now, and says from where on it was', () => {
    const now = takes(0.97);
    expect(now).toMatchObject({ status: 'already-best', tests: undefined, search: { examined: 0, unexamined: 0 } });
    expect(now.threshold).toBeLessThan(0.97);
    expect(takes(1)).toMatchObject({ status: 'already-best', probability: 1 });
  });

  test('has a threshold at which the advice itself turns', () => {
    const { threshold } = takes(0.2);
    const best = (inside: number): string => {
      const compiled = compileModel(smallModel(lidModel(inside)));
      const advice = advise(compiled, beliefOf(compiled, { context: {}, observations: [] })).best;
      return advice.kind === 'repair' ? advice.repair : advice.kind;
    };
    expect(threshold).toBeGreaterThan(0.2);
    expect(best(threshold! - 1e-4)).not.toBe('mend-inside');
    expect(best(threshold! + 1e-4)).toBe('mend-inside');
    expect(takes(threshold! + 1e-4).status).toBe('already-best');
    expect(takes(threshold! - 1e-4).status).toBe('reachable');
  });

  test('names no test when none can decide, and says that all were looked at', () => {
    const coin = { p: { else: { heads: 0.5, tails: 0.5 } }, price: 1 };
    const answer = takes(0.2, { looks: { coin, again: coin, third: coin, fourth: coin } });
    expect(answer.status).toBe('reachable');
    expect(answer.tests).toBeUndefined();
    expect(answer.search).toEqual({ examined: 4 + 6 + 4, unexamined: 0 });
  });

  test('is told as soon as the threshold is known, better and better, and marks what a budget left out', () => {
    const told: WhatItTakes[] = [];
    const onImprove = (answer: WhatItTakes): void => void told.push(answer);
    const whole = takes(0.2, { options: { onImprove } });
    expect(told[0]).toMatchObject({ status: 'reachable', threshold: whole.threshold, tests: undefined });
    expect(told.at(-1)!.tests).toEqual(whole.tests);
    expect(whole.tests!.isLikely).toBe(true);
    expect(whole.search).toEqual({ examined: 3, unexamined: 0 });

    const cut = takes(0.2, { options: { evaluations: 1 } });
    expect(cut.threshold).toBe(whole.threshold);
    expect(cut.search).toEqual({ examined: 1, unexamined: 2 });
    const stopped = takes(0.2, { options: { signal: { aborted: true } } });
    expect(stopped).toMatchObject({ status: 'reachable', tests: undefined, search: { examined: 0, unexamined: 3 } });
    expect(stopped.threshold).toBe(whole.threshold);
  });

  test('refuses what the model does not know', () => {
    expect(() => takes(0.2, { step: { kind: 'access', access: 'lod' } })).toThrow(/lod/);
    expect(() => takes(0.2, { step: { kind: 'repair', repair: 'mend' } })).toThrow(/mend/);
  });
});

// Source: enumeration of every set of at most three tests and every combination of outcomes, written out here. Tolerance 1e-9.
describe('the cheapest deciding tests', () => {
  const row = fc.integer({ min: 1, max: 9 }).map((p) => [p / 10, 1 - p / 10]);
  const question = fc.record({
    prior: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 4 }),
    tests: fc.array(
      fc.record({ cost: fc.integer({ min: 1, max: 60 }), rows: fc.array(row, { minLength: 4, maxLength: 4 }) }),
      { minLength: 1, maxLength: 5 },
    ),
    threshold: fc.double({ min: 0.3, max: 0.95, noNaN: true }),
  });

  test('are those that an enumeration finds, on small random problems', () => {
    let likely = 0;
    fc.assert(
      fc.property(question, ({ prior: weights, tests, threshold }) => {
        const total = weights.reduce((a, b) => a + b, 0);
        const prior = weights.map((w) => w / total);
        const group = Uint8Array.from([1, 0, 0, 1]);
        const problem = compileTableProblem({
          prior,
          tests: tests.map(({ cost, rows }, at) => ({ id: `t${at}`, cost, outcomeGivenCause: rows })),
          repairs: [{ id: 'mend', cost: 50, cures: [1, 0, 0, 0] }],
          referralCost: [200, 200, 200, 200],
        });
        const configurations = problem.configurations();
        const found = decidingTests({ problem, belongs: () => false, group, threshold, configurations });
        const inside = prior[0]! + prior[3]!;
        let cheapest = Infinity;
        let farthest = 0;
        for (let set = 1; set < 1 << tests.length; set += 1) {
          const chosen = tests.filter((_, at) => (set & (1 << at)) !== 0);
          if (chosen.length > 3) continue;
          let reached = 0;
          for (let seen = 0; seen < 1 << chosen.length; seen += 1) {
            const joint = prior.map((p, c) =>
              chosen.reduce((product, { rows }, at) => product * rows[c]![(seen >> at) & 1]!, p),
            );
            const both = joint[0]! + joint[3]!;
            // a hair within the threshold is decided by rounding
            if (Math.abs(both / joint.reduce((a, b) => a + b, 0) - threshold) < 1e-9) return;
            if (both >= threshold * joint.reduce((a, b) => a + b, 0)) reached += both / inside;
          }
          farthest = Math.max(farthest, reached);
          if (reached >= 0.5)
            cheapest = Math.min(
              cheapest,
              chosen.reduce((sum, { cost }) => sum + cost, 0),
            );
          if (Math.abs(reached - 0.5) < 1e-9) return;
        }
        expect(found.unexamined).toBe(0);
        if (cheapest < Infinity) {
          likely += 1;
          expect(found.tests!.isLikely).toBe(true);
          expect(found.tests!.price.amount).toBeCloseTo(cheapest, 9);
        } else if (farthest > 0) {
          expect(found.tests!.isLikely).toBe(false);
          expect(found.tests!.reachedIfTrue).toBeCloseTo(farthest, 9);
        } else expect(found.tests).toBeUndefined();
      }),
      { seed: 20261125, numRuns: 400 },
    );
    expect(likely).toBeGreaterThan(20);
  });
});
