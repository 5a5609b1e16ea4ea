import { compileModel, outcomeGivenCause, parseModel, rankCauses, beliefOf } from '@faultodds/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { enumerateCase } from './enumerateCase.ts';
import { randomFacts, randomModel } from './randomModel.ts';

// Tolerance of this folder: 1e-12 relative. A failing run prints the pair of seeds that make the model and the facts.
const seed = 20261125;
const seeds = fc.noShrink(fc.tuple(fc.nat(), fc.nat()));
const tolerance = 1e-12;

function expectClose(found: number, expected: number, what: string): void {
  const size = Math.max(Math.abs(expected), Number.MIN_VALUE);
  expect(Math.abs(found - expected) / size, `${what}: ${found}, by enumeration ${expected}`).toBeLessThan(tolerance);
}

test('belief equals enumeration over causes and mechanisms', () => {
  let compared = 0;
  fc.assert(
    fc.property(seeds, ([modelSeed, factsSeed]) => {
      const model = parseModel(randomModel(modelSeed));
      const facts = randomFacts(model, factsSeed);
      const expected = enumerateCase(model, facts);
      const compiled = compileModel(model);
      const belief = beliefOf(compiled, facts);
      for (const { id } of model.causes) {
        expectClose(belief.prior[id]!, expected.prior[id]!, `prior of ${id}`);
        expectClose(belief.posterior[id]!, expected.posterior[id]!, `posterior of ${id}`);
      }
      // of a logarithm near 0 the probability behind it is what can be compared
      expectClose(Math.exp(belief.logProbabilityOfEvidence), Math.exp(expected.logProbabilityOfEvidence), 'P(e)');
      expect(rankCauses(compiled, facts).posterior).toEqual(belief.posterior);
      compared += 1;
    }),
    { seed, numRuns: 300 },
  );
  console.log(`belief against enumeration: ${compared} cases, seed ${seed}`);
  expect(compared).toBe(300);
});

test('what each test would show, given each cause and overall, equals enumeration', () => {
  let compared = 0;
  fc.assert(
    fc.property(seeds, ([modelSeed, factsSeed]) => {
      const model = parseModel(randomModel(modelSeed));
      const facts = randomFacts(model, factsSeed);
      const expected = enumerateCase(model, facts);
      const compiled = compileModel(model);
      const belief = beliefOf(compiled, facts);
      for (const [id, outcomes] of Object.entries(belief.predictive)) {
        const given = outcomeGivenCause(compiled, belief, id);
        const possible = model.causes.filter((cause) => expected.prior[cause.id]! > 0);
        expect(Object.keys(given)).toEqual(possible.map((cause) => cause.id));
        for (const outcome of Object.keys(outcomes)) {
          let overall = 0;
          for (const cause of possible) {
            const p = expected.outcomeGivenCause(id, cause.id, outcome);
            expectClose(given[cause.id]![outcome]!, p, `P(${id} = ${outcome} | ${cause.id})`);
            overall += p * expected.posterior[cause.id]!;
            compared += 1;
          }
          expectClose(outcomes[outcome]!, overall, `P(${id} = ${outcome})`);
        }
      }
    }),
    { seed, numRuns: 150 },
  );
  console.log(`predictives against enumeration: ${compared} numbers, seed ${seed}`);
  expect(compared).toBeGreaterThan(1000);
});
