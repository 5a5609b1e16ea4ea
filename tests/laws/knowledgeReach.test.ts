// Every cause of the misfire model can be found out: an affordable sequence of at most five typical results brings it from its intake
// prior to 90 %. Affordable: at default prices each test costs at most 500 units with the access it opens, the sequence 1200.
// Typical: the cause shows the result at least once in four. Searched greedily. `not-listed` is no cause that can be shown.
import { advise, outcomeGivenCause, beliefOf, type Context, type TestResult } from '@faultodds/core';
import { expect, test } from 'vitest';
import { compiled, model } from '../scenarios/misfireCases.ts';

const MOST = { results: 5, perTest: 500, together: 1200 };
const TYPICAL = 0.25;

interface Option {
  readonly results: readonly { readonly test: string; readonly outcome: string }[];
  readonly price: number;
  readonly opens: readonly string[];
  readonly reached: number;
}

const resultsOf = (steps: readonly { readonly test: string; readonly outcome: string }[]): TestResult[] =>
  steps.map((step, at) => ({ kind: 'result', id: `r${at}`, ...step }));

/** What can be done now, with the typical results of a cause: single tests. */
function typicalResults(cause: string, context: Context, done: Option['results'], open: readonly string[]): Option[] {
  const belief = beliefOf(compiled, { context, observations: resultsOf(done) });
  return advise(compiled, belief, { openAccess: open }).tests.flatMap(({ test: id, price, accessToOpen }) => {
    if (price.amount > MOST.perTest) return [];
    const given = outcomeGivenCause(compiled, belief, id)[cause]!;
    return Object.entries(given).flatMap(([outcome, likelihood]): Option[] => {
      if (likelihood < TYPICAL) return [];
      const reached = (belief.posterior[cause]! * likelihood) / belief.predictive[id]![outcome]!;
      return [{ results: [{ test: id, outcome }], price: price.amount, opens: accessToOpen, reached }];
    });
  });
}

/** The results found, with what they cost and the probability they lead to. A look and what follows it are one choice. */
function sequenceFor(cause: string, context: Context): { probability: number; cost: number; steps: string[] } {
  let done: Option['results'] = [];
  let open: readonly string[] = [];
  let cost = 0;
  let probability = beliefOf(compiled, { context, observations: [] }).posterior[cause]!;
  while (probability < 0.9 && done.length < MOST.results) {
    const single = typicalResults(cause, context, done, open);
    const followed = single.flatMap((look) => {
      const [{ test: id, outcome }] = look.results as [Option['results'][number]];
      const followers = model.tests.filter(({ follows }) =>
        follows?.some((one) => one.test === id && one.outcomes.includes(outcome)),
      );
      if (followers.length === 0) return [];
      return typicalResults(cause, context, [...done, ...look.results], [...open, ...look.opens])
        .filter(({ results: [then] }) => followers.some((one) => one.id === then!.test))
        .map((then) => ({
          results: [...look.results, ...then.results],
          price: look.price + then.price,
          opens: [...look.opens, ...then.opens],
          reached: then.reached,
        }));
    });
    const options = [...single, ...followed].filter(
      ({ price, results }) => cost + price <= MOST.together && done.length + results.length <= MOST.results,
    );
    if (options.length === 0) break;
    const best = options.reduce((a, b) => (b.reached > a.reached ? b : a));
    done = [...done, ...best.results];
    open = [...open, ...best.opens];
    cost += best.price;
    probability = best.reached;
  }
  return { probability, cost, steps: done.map(({ test: id, outcome }) => `${id}: ${outcome}`) };
}

test.each(
  model.causes.filter(({ id }) => id !== 'not-listed').map(({ id, requires }) => [id, requires ?? {}] as const),
)('%s', (cause, context) => {
  const { probability, cost, steps } = sequenceFor(cause, context);
  expect(probability, steps.join('; ')).toBeGreaterThanOrEqual(0.9);
  expect(steps.length).toBeLessThanOrEqual(MOST.results);
  expect(cost).toBeLessThanOrEqual(MOST.together);
});
