// Every cause of the misfire model can be found out: an affordable sequence of at most five typical results brings it from its intake
// prior to 90 %. Affordable: at default prices each test costs at most 500 units with the access it opens, the sequence 1200.
// Typical: the cause shows the result at least once in four. Searched greedily. `not-listed` is no cause that can be shown.
import { advise, outcomeGivenCause, beliefOf, type Context, type TestResult } from '@faultodds/core';
import { expect, test } from 'vitest';
import { compiled, model } from '../scenarios/misfireCases.ts';

const MOST = { results: 5, perTest: 500, together: 1200 };
const TYPICAL = 0.25;

/** The results found, with what they cost and the probability they lead to. */
function sequenceFor(cause: string, context: Context): { probability: number; cost: number; steps: string[] } {
  const observations: TestResult[] = [];
  const openAccess = new Set<string>();
  const steps: string[] = [];
  let cost = 0;
  for (;;) {
    const belief = beliefOf(compiled, { context, observations });
    const probability = belief.posterior[cause]!;
    if (probability >= 0.9 || observations.length === MOST.results) return { probability, cost, steps };
    const offered = advise(compiled, belief, { openAccess: [...openAccess] }).tests.flatMap((one) => {
      const price = one.price.amount;
      if (price > MOST.perTest || cost + price > MOST.together) return [];
      const given = outcomeGivenCause(compiled, belief, one.test)[cause]!;
      return Object.entries(given).flatMap(([outcome, likelihood]) => {
        const reached = (probability * likelihood) / belief.predictive[one.test]![outcome]!;
        return likelihood < TYPICAL ? [] : [{ ...one, price, outcome, reached }];
      });
    });
    const best = offered.reduce((a, b) => (b.reached > a.reached ? b : a));
    observations.push({ kind: 'result', id: `r${observations.length}`, test: best.test, outcome: best.outcome });
    for (const id of best.accessToOpen) openAccess.add(id);
    cost += best.price;
    steps.push(`${best.test}: ${best.outcome}`);
  }
}

test.each(
  model.causes.filter(({ id }) => id !== 'not-listed').map(({ id, requires }) => [id, requires ?? {}] as const),
)('%s', (cause, context) => {
  const { probability, cost, steps } = sequenceFor(cause, context);
  expect(probability, steps.join('; ')).toBeGreaterThanOrEqual(0.9);
  expect(steps.length).toBeLessThanOrEqual(MOST.results);
  expect(cost).toBeLessThanOrEqual(MOST.together);
});
