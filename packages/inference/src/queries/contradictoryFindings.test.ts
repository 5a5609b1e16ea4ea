import { describe, expect, test } from 'vitest';
import { enumerateNetwork, sumTo } from '../../../../tests/oracle/enumerateNetwork.ts';
import { randomRows } from '../../../../tests/oracle/randomNetwork.ts';
import { compileEach, posteriorGivenEach } from '../entries/each.ts';
import {
  compileNetwork,
  createPropagation,
  defineNetwork,
  posterior,
  propagate,
  setFinding,
  type VariableDefinition,
} from '../index.ts';
import { compileSweep, sweepRoot } from '../entries/sweeps.ts';
import { createRandom } from '../entries/sampling.ts';

// 150 findings speak for one state by four orders of magnitude each, 150 for the other: every half alone is beyond the range of doubles
const states = ['yes', 'no'];
const clue = (name: string, parent: string, table: number[]): VariableDefinition => ({
  name,
  states,
  parents: [parent],
  table,
});
const clues = (parent: string, table: number[]): VariableDefinition[] =>
  Array.from({ length: 150 }, (_, k) => clue(`${parent}${k}`, parent, table));

describe('findings that contradict each other beyond the range of doubles', () => {
  // a and b are the same thing, told apart by their clues; c depends on it
  const definition = {
    variables: [
      { name: 'a', states, table: [0.25, 0.75] },
      clue('b', 'a', [1, 0, 0, 1]),
      clue('c', 'a', [0.9, 0.1, 0.3, 0.7]),
      ...clues('a', [0.9, 0.1, 0.9e-4, 1 - 0.9e-4]),
      ...clues('b', [0.9e-4, 1 - 0.9e-4, 0.9, 0.1]),
    ],
  };
  const network = defineNetwork(definition);
  const evidence = Object.fromEntries(definition.variables.slice(3).map(({ name }) => [name, 'yes']));
  const logEvidence = 150 * Math.log(0.9 * 0.9e-4);

  test('a message that has lost a number is noticed, and the question answered in logarithms', () => {
    const compiled = compileNetwork(network);
    const workspace = createPropagation(compiled);
    for (const { name, index } of network.variables) if (name in evidence) setFinding(workspace, index, 0);
    propagate(workspace);
    expect(workspace.now.doubtful).toBe(true);
    const answer = posterior(compiled, evidence);
    expect(answer.marginals['a']!['yes']).toBeCloseTo(0.25, 10);
    expect(answer.marginals['c']!['yes']).toBeCloseTo(0.25 * 0.9 + 0.75 * 0.3, 10);
    expect(answer.logProbabilityOfEvidence / logEvidence).toBeCloseTo(1, 12);
  });

  test('given each state of a variable too', () => {
    const answer = posteriorGivenEach(compileEach(network, 'c'), evidence);
    const yes = 0.25 * 0.9 + 0.75 * 0.3;
    expect(answer.marginals['a']![0]).toBeCloseTo((0.25 * 0.9) / yes, 10);
    expect(answer.marginals['a']![2]).toBeCloseTo((0.25 * 0.1) / (1 - yes), 10);
    expect(answer.logEvidence[0]! / logEvidence).toBeCloseTo(1, 12);
  });
});

test('a sweep over a component too large to multiply out, by factors far apart, equals enumeration', () => {
  const random = createRandom(8);
  const six = ['s0', 's1', 's2', 's3', 's4', 's5'];
  const definition = {
    variables: [
      { name: 'root', states: ['r', 't'], table: [0.5, 0.5] },
      ...Array.from({ length: 6 }, (_, k) => ({
        name: `v${k}`,
        states: six,
        parents: ['root'],
        table: randomRows(random, 2, 6),
      })),
    ],
  };
  // a chain of factors ties all six together; four of them disagree about v0 by 120 orders of magnitude each
  const chain = Array.from({ length: 5 }, (_, k) => ({
    variables: [`v${k}`, `v${k + 1}`],
    values: Float64Array.from({ length: 36 }, () => 0.1 + random()),
  }));
  const aboutV0 = (first: number, others: number): { variables: string[]; values: Float64Array } => ({
    variables: ['v0'],
    values: Float64Array.of(first, others, others, others, others, others),
  });
  for (const extreme of [1, 1e-120]) {
    const likelihoods = [...chain, aboutV0(1, extreme), aboutV0(extreme, 1), aboutV0(1, extreme), aboutV0(extreme, 1)];
    const posteriorsOf = definition.variables.slice(1).map(({ name }) => name);
    const target = { id: 'all', parents: posteriorsOf, states: 2, table: randomRows(random, 6 ** 6, 2) };
    const result = sweepRoot(compileSweep(defineNetwork(definition), { root: 'root' }), {
      likelihoods,
      targets: [target],
      posteriorsOf,
    });
    const joint = enumerateNetwork(definition, likelihoods);
    const given = sumTo(definition, joint, ['root']);
    for (const r of [0, 1]) {
      expect(result.logEvidenceGivenRoot[r]).toBeCloseTo(Math.log(given[r]! / 0.5), 10);
      const rows = sumTo(definition, joint, ['root', ...posteriorsOf]).subarray(r * 6 ** 6, (r + 1) * 6 ** 6);
      const first = rows.reduce((sum, value, u) => sum + value * target.table[2 * u]!, 0);
      expect(result.targets.get('all')![2 * r]).toBeCloseTo(first / given[r]!, 11);
      for (const name of posteriorsOf) {
        const table = sumTo(definition, joint, ['root', name]);
        six.forEach((_, s) =>
          expect(result.posteriors.get(name)![r * 6 + s]).toBeCloseTo(table[r * 6 + s]! / given[r]!, 11),
        );
      }
    }
  }
});
