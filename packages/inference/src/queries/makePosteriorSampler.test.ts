import { expect, test } from 'vitest';
import { randomNetwork } from '../../../../tests/oracle/randomNetwork.ts';
import { compileNetwork, defineNetwork, ImpossibleEvidenceError, posterior } from '../index.ts';
import { makePosteriorSampler, sampleNetwork, createRandom } from '../entries/sampling.ts';

const definition = randomNetwork(createRandom(3), 9, 3, 0.1);
const network = defineNetwork(definition);
const compiled = compileNetwork(network);
const draws = 20_000;

function worstDeviation(evidence: Record<string, string | number[]>, draw: () => Record<string, string>): number {
  const { marginals } = posterior(compiled, evidence);
  const counts = new Map<string, number>();
  for (let k = 0; k < draws; k += 1) {
    for (const [name, state] of Object.entries(draw()))
      counts.set(`${name}=${state}`, (counts.get(`${name}=${state}`) ?? 0) + 1);
  }
  let worst = 0;
  for (const [name, states] of Object.entries(marginals)) {
    for (const [state, p] of Object.entries(states)) {
      const share = (counts.get(`${name}=${state}`) ?? 0) / draws;
      if (p === 0 || p === 1) expect(share, `${name}=${state}`).toBe(p);
      else worst = Math.max(worst, Math.abs(share - p) / Math.sqrt((p * (1 - p)) / draws));
    }
  }
  return worst;
}

test('draws follow the network: no share is five standard errors off', () => {
  const random = createRandom(11);
  expect(worstDeviation({}, () => sampleNetwork(network, random))).toBeLessThan(5);
});

test('draws given evidence follow the posterior: no share is five standard errors off', () => {
  const [a, b] = [definition.variables[0]!, definition.variables[5]!];
  const evidence = { [a.name]: a.states[0]!, [b.name]: b.states.map((_, s) => s + 0.5) };
  const draw = makePosteriorSampler(compiled, evidence);
  const random = createRandom(12);
  expect(worstDeviation(evidence, () => draw(random))).toBeLessThan(5);
});

test('the same seed gives the same draws', () => {
  const draw = makePosteriorSampler(compiled, {});
  expect(draw(createRandom(5))).toEqual(draw(createRandom(5)));
  expect(sampleNetwork(network, createRandom(5))).toEqual(sampleNetwork(network, createRandom(5)));
});

test('impossible evidence is refused', () => {
  const name = definition.variables[0]!.name;
  expect(() => makePosteriorSampler(compiled, { [name]: definition.variables[0]!.states.map(() => 0) })).toThrow(
    ImpossibleEvidenceError,
  );
});
