import { expect, test } from 'vitest';
import { randomNetwork } from '../../../../tests/oracle/randomNetwork.ts';
import { compileEach, posteriorGivenEach } from '../entries/each.ts';
import { compileNetwork, defineNetwork, ImpossibleEvidenceError, posterior } from '../index.ts';
import { createRandom } from '../entries/sampling.ts';

test('one propagation given each state equals asking with every state in turn, on random networks', () => {
  for (let seed = 1; seed <= 40; seed += 1) {
    const random = createRandom(seed);
    const definition = randomNetwork(random, 2 + Math.floor(random() * 9), 3, seed % 3 === 0 ? 0.2 : 0);
    const network = defineNetwork(definition);
    const each = definition.variables[Math.floor(random() * definition.variables.length)]!;
    const batch = compileEach(network, each.name);
    const single = compileNetwork(network);
    for (let round = 0; round < 4; round += 1) {
      const evidence: Record<string, string | number[]> = {};
      for (const { name, states } of definition.variables) {
        if (name === each.name || random() > 0.35) continue;
        evidence[name] = random() < 0.6 ? states[Math.floor(random() * states.length)]! : states.map(() => random());
      }
      let prior: Record<string, number> = {};
      let answer: ReturnType<typeof posteriorGivenEach> | null = null;
      try {
        prior = posterior(single, {}).marginals[each.name]!;
        answer = posteriorGivenEach(batch, evidence);
      } catch (error) {
        if (!(error instanceof ImpossibleEvidenceError)) throw error;
      }
      each.states.forEach((state, e) => {
        let expected: ReturnType<typeof posterior> | null = null;
        try {
          expected = posterior(single, { ...evidence, [each.name]: state });
        } catch (error) {
          if (!(error instanceof ImpossibleEvidenceError)) throw error;
        }
        const where = `seed ${seed} round ${round} ${each.name}=${state}`;
        if (expected === null) {
          if (answer !== null) expect(answer.logEvidence[e], where).toBe(-Infinity);
          return;
        }
        expect(answer!.logEvidence[e], where).toBeCloseTo(
          expected.logProbabilityOfEvidence - Math.log(prior[state]!),
          10,
        );
        for (const { name, states } of definition.variables) {
          states.forEach((other, s) => {
            expect(answer!.marginals[name]![e * states.length + s], `${where} ${name}`).toBeCloseTo(
              expected.marginals[name]![other]!,
              11,
            );
          });
        }
      });
    }
  }
});
