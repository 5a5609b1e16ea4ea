// A result that has nothing to do with a cause does not move it against others it has nothing to do with: their odds keep within 1 %
// (in fact within rounding). A test touches a cause when a row names it or reads a mechanism it disturbs, directly or through one that
// depends on it. Over all tests, outcomes and causes of the misfire model, from intake and after any one result that touches neither.
import { outcomeGivenCause, beliefOf, type Cause, type Context, type Test } from '@faultodds/core';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { compiled, model } from '../scenarios/misfireCases.ts';

const everything: Context = { 'variable-lift': 'fitted', 'cylinder-deactivation': 'fitted' };
const parentsOf = new Map(model.mechanisms.map(({ id, parents = [] }) => [id, parents]));

const touches = ({ rows }: Test, { id, states }: Cause): boolean => {
  const read = new Set(rows.flatMap(({ when }) => Object.keys(when)).flatMap((m) => [m, ...(parentsOf.get(m) ?? [])]));
  return rows.some(({ when }) => when['cause']?.includes(id)) || Object.keys(states).some((m) => read.has(m));
};
const untouchedBy = (one: Test): Cause[] => model.causes.filter((cause) => !touches(one, cause));

/** Largest ratio of P(outcome | cause) among these causes. */
function spread(one: Test, causes: readonly Cause[], before: readonly [test: string, outcome: string][]): number {
  const belief = beliefOf(compiled, { context: everything, observations: results(...before) });
  const given = outcomeGivenCause(compiled, belief, one.id);
  return Math.max(
    ...one.outcomes.map(({ id }) => {
      const likelihoods = causes.map((cause) => given[cause.id]![id]!);
      return Math.max(...likelihoods) / Math.min(...likelihoods);
    }),
  );
}

test('most pairs of a test and a cause have nothing to do with each other, so the law speaks of something', () => {
  const pairs = model.tests.flatMap((one) => untouchedBy(one));
  expect(pairs.length).toBeGreaterThan(0.4 * model.tests.length * model.causes.length);
});

test('at intake', () => {
  for (const one of model.tests) {
    const causes = untouchedBy(one);
    if (causes.length > 1) expect(spread(one, causes, []), one.id).toBeLessThan(1.01);
  }
});

test('after any one result that touches neither', () => {
  for (const earlier of model.tests) {
    for (const { id } of earlier.outcomes) {
      for (const one of model.tests.filter((other) => other !== earlier)) {
        const causes = untouchedBy(one).filter((cause) => !touches(earlier, cause));
        if (causes.length > 1)
          expect(spread(one, causes, [[earlier.id, id]]), `${one.id} after ${earlier.id} ${id}`).toBeLessThan(1.01);
      }
    }
  }
});
