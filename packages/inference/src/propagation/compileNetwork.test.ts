import { expect, test } from 'vitest';
import { randomNetwork } from '../../../../tests/oracle/randomNetwork.ts';
import { compileNetwork, defineNetwork, posterior, TreeWidthError } from '../index.ts';
import { QueryError, relevantNetwork } from '../entries/analysis.ts';
import { createRandom } from '../entries/sampling.ts';

test('a tree beyond the memory limit is refused before it is allocated, with its width and size', () => {
  const parents = Array.from({ length: 20 }, (_, k) => ({ name: `p${k}`, states: ['a', 'b'], table: [0.5, 0.5] }));
  const pairs = parents.flatMap((a, i) =>
    parents.slice(i + 1).map((b) => ({
      name: `${a.name}${b.name}`,
      states: ['a', 'b'],
      parents: [a.name, b.name],
      table: [1, 0, 0, 1, 0, 1, 1, 0],
    })),
  );
  const network = defineNetwork({ variables: [...parents, ...pairs] });
  const refuse = (): TreeWidthError | null => {
    try {
      compileNetwork(network, { memoryLimitBytes: 2 ** 20 });
    } catch (error) {
      if (error instanceof TreeWidthError) return error;
      throw error;
    }
    return null;
  };
  expect(refuse()).toMatchObject({ code: 'tree-too-wide', width: 19, largestTable: 2 ** 20 });
  expect(refuse()!.bytes).toBeGreaterThan(8 * 2 ** 20);
  // three of them are easy
  const part = relevantNetwork(network, ['p0p1', 'p2']);
  expect(part.variables.map(({ name }) => name)).toEqual(['p0', 'p1', 'p2', 'p0p1']);
  expect(posterior(compileNetwork(part), { p0p1: 'a' }).marginals['p0']!['a']).toBeCloseTo(0.5, 14);
  expect(() => relevantNetwork(network, ['nobody'])).toThrow(QueryError);
});

test('the relevant part answers as the whole does', () => {
  const definition = randomNetwork(createRandom(21), 12, 3);
  const network = defineNetwork(definition);
  const [asked, seen] = [definition.variables[2]!, definition.variables[7]!];
  const evidence = { [seen.name]: seen.states[0]! };
  const whole = posterior(compileNetwork(network), evidence);
  const part = posterior(compileNetwork(relevantNetwork(network, [asked.name, seen.name])), evidence);
  expect(part.logProbabilityOfEvidence).toBeCloseTo(whole.logProbabilityOfEvidence, 13);
  for (const state of asked.states)
    expect(part.marginals[asked.name]![state]).toBeCloseTo(whole.marginals[asked.name]![state]!, 13);
});

test('the same network compiles to the same tree, and more search never to a larger one', () => {
  const network = defineNetwork(randomNetwork(createRandom(5), 40, 3));
  const entries = (restarts: number): number =>
    compileNetwork(network, { search: { restarts, share: Infinity } }).tree.cliqueEntries;
  expect(entries(10)).toBe(entries(10));
  expect(entries(60)).toBeLessThanOrEqual(entries(0));
});
