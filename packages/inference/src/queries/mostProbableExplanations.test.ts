import { describe, expect, test } from 'vitest';
import { enumerateNetwork } from '../../../../tests/oracle/enumerateNetwork.ts';
import { randomNetwork, createRandom } from '../../../../tests/oracle/randomNetwork.ts';
import { compileNetwork, defineNetwork, ImpossibleEvidenceError } from '../index.ts';
import { mostProbableExplanation, mostProbableExplanations } from '../entries/analysis.ts';

describe('most probable explanations', () => {
  test('are the largest entries of the joint, in order, on random networks', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const random = createRandom(seed);
      const definition = randomNetwork(random, 2 + Math.floor(random() * 6), 3, seed % 3 === 0 ? 0.3 : 0);
      const evidence: Record<string, string | number[]> = {};
      const weights: { variables: string[]; values: number[] }[] = [];
      for (const variable of definition.variables) {
        if (random() > 0.3) continue;
        const values = variable.states.map(() => random() * 2);
        evidence[variable.name] = values;
        weights.push({ variables: [variable.name], values });
      }
      const joint = [...enumerateNetwork(definition, weights)].filter((value) => value > 0).sort((a, b) => b - a);
      const found = mostProbableExplanations(compileNetwork(defineNetwork(definition)), evidence, 12);
      expect(found.length, `seed ${seed}`).toBe(Math.min(12, joint.length));
      expect(new Set(found.map((one) => JSON.stringify(one.states))).size, `seed ${seed}`).toBe(found.length);
      found.forEach((one, k) => {
        expect(one.logProbability, `seed ${seed} rank ${k}`).toBeCloseTo(Math.log(joint[k]!), 10);
        const own = definition.variables.reduce((product, variable) => {
          const at = (variable.parents ?? []).reduce((row, name) => {
            const parent = definition.variables.find((other) => other.name === name)!;
            return row * parent.states.length + parent.states.indexOf(one.states[name]!);
          }, 0);
          const state = variable.states.indexOf(one.states[variable.name]!);
          const weight = (evidence[variable.name] as number[] | undefined)?.[state] ?? 1;
          return product * weight * variable.table[at * variable.states.length + state]!;
        }, 1);
        expect(Math.log(own), `seed ${seed} rank ${k}`).toBeCloseTo(one.logProbability, 10);
      });
    }
  });

  test('keep hard evidence and refuse impossible evidence', () => {
    const compiled = compileNetwork(
      defineNetwork({
        variables: [
          { name: 'a', states: ['x', 'y'], table: [0.9, 0.1] },
          { name: 'b', states: ['x', 'y'], parents: ['a'], table: [1, 0, 0.5, 0.5] },
        ],
      }),
    );
    expect(mostProbableExplanation(compiled, { b: 'y' }).states).toEqual({ a: 'y', b: 'y' });
    expect(mostProbableExplanation(compiled, { b: 'y' }).logProbability).toBeCloseTo(Math.log(0.05), 14);
    expect(() => mostProbableExplanation(compiled, { a: 'x', b: 'y' })).toThrow(ImpossibleEvidenceError);
  });
});
