import { compileModel, parseModel, beliefOf, type Belief, type CompiledModel, type TestResult } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallModel } from '../fixtures/smallModel.ts';
import { seed } from './anyCase.ts';

/** Belief after 0, 1, 2, … runs of one test with one outcome. */
function afterRuns(compiled: CompiledModel, id: string, outcome: string, runs: number): Belief[] {
  const all = Array.from({ length: runs }, (_, at): TestResult => ({
    kind: 'result',
    id: `r${at}`,
    test: id,
    outcome,
  }));
  return Array.from({ length: runs + 1 }, (_, count) =>
    beliefOf(compiled, { context: {}, observations: all.slice(0, count) }),
  );
}

/** How far log odds between any two causes moved, at most. */
function widestMove(before: Belief, after: Belief): number {
  const moves = before.ranking.map(({ cause }) => Math.log(after.posterior[cause]! / before.posterior[cause]!));
  return Math.max(...moves) - Math.min(...moves);
}

test('a repeat moves the odds of any two causes less than the first run, and in the same direction', () => {
  const p = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  const repeatability = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  fc.assert(
    fc.property(p, p, repeatability, (a, b, r) => {
      const row = (yes: number) => ({ yes, no: 1 - yes });
      const model = smallModel({
        causes: { a: 1, b: 1 },
        tests: { t: { p: { a: row(a), else: row(b) }, repeatability: r } },
      });
      const [none, once, twice] = afterRuns(compileModel(model), 't', 'yes', 2);
      const odds = (belief: Belief) => Math.log(belief.posterior['a']! / belief.posterior['b']!);
      const first = odds(once!) - odds(none!);
      const second = odds(twice!) - odds(once!);
      expect(Math.abs(second)).toBeLessThanOrEqual(Math.abs(first) + 1e-12);
      expect(first * second).toBeGreaterThanOrEqual(-1e-12);
    }),
    { seed, numRuns: 100 },
  );
});

test('an error that always repeats makes the second run worthless, one that never does makes it a new test', () => {
  const row = (yes: number) => ({ yes, no: 1 - yes });
  const odds = (repeatability: number) => {
    const model = smallModel({
      causes: { a: 1, b: 1 },
      tests: { t: { p: { a: row(0.9), else: row(0.3) }, repeatability } },
    });
    return afterRuns(compileModel(model), 't', 'yes', 2).map(({ posterior }) => posterior['a']! / posterior['b']!);
  };
  expect(odds(1)[2]).toBeCloseTo(odds(1)[1]!, 12);
  expect(odds(1)[1]).toBeCloseTo(3, 12);
  expect(odds(0)[2]).toBeCloseTo(9, 12);
});

describe('in the misfire model', () => {
  const model = parseModel(misfire);
  const compiled = compileModel(model);
  const { predictive } = beliefOf(compiled, { context: {}, observations: [] });
  const applicable = model.tests.filter(({ id }) => predictive[id] !== undefined);

  test.each(applicable.map((one) => [one.id, one.outcomes.map(({ id }) => id)] as const))(
    'a repeat of %s moves belief less than the first run',
    (id, outcomes) => {
      for (const outcome of outcomes) {
        const [none, once, twice, thrice] = afterRuns(compiled, id, outcome, 3);
        const first = widestMove(none!, once!);
        expect(widestMove(once!, twice!), outcome).toBeLessThan(first);
        expect(widestMove(twice!, thrice!), outcome).toBeLessThan(first);
        expect(twice!.warnings).toContainEqual(expect.objectContaining({ kind: 'repeated', items: ['r0', 'r1'] }));
      }
    },
  );
});
