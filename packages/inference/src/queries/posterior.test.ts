import { describe, expect, test } from 'vitest';
import { enumerateNetwork, sumTo } from '../../../../tests/oracle/enumerateNetwork.ts';
import { randomNetwork, createRandom } from '../../../../tests/oracle/randomNetwork.ts';
import {
  compileNetwork,
  defineNetwork,
  EvidenceInputError,
  ImpossibleEvidenceError,
  posterior,
  type CompiledNetwork,
  type Posterior,
  type Evidence,
} from '../index.ts';
import { jointPosterior, QueryError } from '../entries/analysis.ts';

const alarm = defineNetwork({
  variables: [
    { name: 'burglary', states: ['yes', 'no'], table: [0.001, 0.999] },
    { name: 'earthquake', states: ['yes', 'no'], table: [0.002, 0.998] },
    {
      name: 'alarm',
      states: ['yes', 'no'],
      parents: ['burglary', 'earthquake'],
      table: [0.95, 0.05, 0.94, 0.06, 0.29, 0.71, 0.001, 0.999],
    },
    { name: 'john', states: ['yes', 'no'], parents: ['alarm'], table: [0.9, 0.1, 0.05, 0.95] },
    { name: 'mary', states: ['yes', 'no'], parents: ['alarm'], table: [0.7, 0.3, 0.01, 0.99] },
  ],
});

describe('posterior', () => {
  test('P(burglary | both call) is 0.284171835 (Russell & Norvig, Artificial Intelligence, ch. on Bayesian networks; recomputed, 0.284 printed)', () => {
    const answer = posterior(compileNetwork(alarm), { john: 'yes', mary: 'yes' });
    expect(answer.marginals['burglary']!['yes']).toBeCloseTo(0.2841718353643929, 13);
    expect(answer.marginals['john']).toEqual({ yes: 1, no: 0 });
  });

  test('equals enumeration on random networks, hard and likelihood evidence mixed', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const random = createRandom(seed);
      const definition = randomNetwork(random, 2 + Math.floor(random() * 7), 3, seed % 3 === 0 ? 0.2 : 0);
      const evidence: Record<string, string | number[]> = {};
      const weights: { variables: string[]; values: number[] }[] = [];
      for (const variable of definition.variables) {
        const draw = random();
        if (draw > 0.5) continue;
        const hard = Math.floor(random() * variable.states.length);
        const values = variable.states.map((_, state) => (draw < 0.25 ? Number(state === hard) : random() * 3));
        evidence[variable.name] = draw < 0.25 ? variable.states[hard]! : values;
        weights.push({ variables: [variable.name], values });
      }
      const joint = enumerateNetwork(definition, weights);
      const total = joint.reduce((sum, value) => sum + value, 0);
      const compiled = compileNetwork(defineNetwork(definition));
      if (total === 0) {
        expect(() => posterior(compiled, evidence), `seed ${seed}`).toThrow(ImpossibleEvidenceError);
        continue;
      }
      const answer = posterior(compiled, evidence);
      expect(answer.logProbabilityOfEvidence, `seed ${seed}`).toBeCloseTo(Math.log(total), 11);
      for (const variable of definition.variables) {
        const expected = sumTo(definition, joint, [variable.name]);
        variable.states.forEach((state, at) => {
          expect(answer.marginals[variable.name]![state], `seed ${seed} ${variable.name}`).toBeCloseTo(
            expected[at]! / total,
            12,
          );
        });
      }
      const names = definition.variables
        .slice(0, 3)
        .map((variable) => variable.name)
        .reverse();
      const pair = jointPosterior(compiled, evidence, names);
      sumTo(definition, joint, names).forEach((value, at) => {
        expect(pair.probabilities[at], `seed ${seed} joint`).toBeCloseTo(value / total, 12);
      });
    }
  });

  test('survives 300 findings of probability 1e-6 each', () => {
    const clues = Array.from({ length: 300 }, (_, k) => ({
      name: `clue${k}`,
      states: ['seen', 'not'],
      parents: ['fault'],
      table: [1e-6, 1 - 1e-6, 2e-6, 1 - 2e-6],
    }));
    const compiled = compileNetwork(
      defineNetwork({ variables: [{ name: 'fault', states: ['a', 'b'], table: [0.5, 0.5] }, ...clues] }),
    );
    const answer = posterior(compiled, Object.fromEntries(clues.map((clue) => [clue.name, 'seen'])));
    // log(0.5 * (1e-6)^300 * (1 + 2^300)): by hand
    expect(answer.logProbabilityOfEvidence / (Math.log(0.5) + 300 * Math.log(1e-6) + 300 * Math.LN2)).toBeCloseTo(
      1,
      12,
    );
    expect(answer.marginals['fault']!['a']! / 2 ** -300).toBeCloseTo(1, 10);
  });

  test('forgets nothing when 150 findings speak for one state and 150 as strongly for the other', () => {
    const clue = (name: string, table: number[]) => ({ name, states: ['seen', 'not'], parents: ['fault'], table });
    const clues = Array.from({ length: 300 }, (_, k) =>
      clue(`clue${k}`, k < 150 ? [0.9, 0.1, 0.9e-4, 1 - 0.9e-4] : [0.9e-4, 1 - 0.9e-4, 0.9, 0.1]),
    );
    const compiled = compileNetwork(
      defineNetwork({ variables: [{ name: 'fault', states: ['a', 'b'], table: [0.25, 0.75] }, ...clues] }),
    );
    const answer = posterior(compiled, Object.fromEntries(clues.map(({ name }) => [name, 'seen'])));
    expect(answer.marginals['fault']!['a']).toBeCloseTo(0.25, 10);
    expect(answer.logProbabilityOfEvidence / (150 * Math.log(0.9 * 0.9e-4))).toBeCloseTo(1, 12);
    // and the workspace is sound afterwards
    expect(posterior(compiled, { clue0: 'seen' }).marginals['fault']!['a']).toBeCloseTo(
      (0.25 * 0.9) / (0.25 * 0.9 + 0.75 * 0.9e-4),
      14,
    );
  });

  test('keeps nothing stale: a hundred changes of evidence in a row equal asking afresh', () => {
    for (let seed = 1; seed <= 8; seed += 1) {
      const random = createRandom(seed);
      const definition = randomNetwork(random, 14, 3, seed % 2 === 0 ? 0.1 : 0);
      const network = defineNetwork(definition);
      const kept = compileNetwork(network);
      const evidence: Record<string, string | number[]> = {};
      for (let round = 0; round < 100; round += 1) {
        const { name, states } = definition.variables[Math.floor(random() * 14)]!;
        const choice = random();
        if (choice < 0.4) delete evidence[name];
        else if (choice < 0.8) evidence[name] = states[Math.floor(random() * states.length)]!;
        else evidence[name] = states.map(() => random());
        const ask = (compiled: CompiledNetwork): Posterior | null => {
          try {
            return posterior(compiled, evidence);
          } catch (error) {
            if (error instanceof ImpossibleEvidenceError) return null;
            throw error;
          }
        };
        const again = ask(kept);
        const afresh = ask(compileNetwork(network));
        if (again === null || afresh === null) {
          expect(again, `seed ${seed} round ${round}`).toBe(afresh);
          continue;
        }
        expect(again.logProbabilityOfEvidence, `seed ${seed} round ${round}`).toBeCloseTo(
          afresh.logProbabilityOfEvidence,
          12,
        );
        for (const variable of definition.variables) {
          for (const state of variable.states) {
            expect(again.marginals[variable.name]![state], `seed ${seed} round ${round}`).toBeCloseTo(
              afresh.marginals[variable.name]![state]!,
              13,
            );
          }
        }
      }
    }
  });

  test('a likelihood may have any scale, and log P(evidence) keeps it', () => {
    const compiled = compileNetwork(alarm);
    const small = posterior(compiled, { john: [3e-200, 1e-200], mary: [2e200, 1e200] });
    const plain = posterior(compiled, { john: [3, 1], mary: [2, 1] });
    expect(small.marginals['burglary']!['yes']).toBeCloseTo(plain.marginals['burglary']!['yes']!, 14);
    expect(small.logProbabilityOfEvidence).toBeCloseTo(plain.logProbabilityOfEvidence, 10);
  });

  test('refuses what does not fit, by code', () => {
    const compiled = compileNetwork(alarm);
    const codes = (evidence: unknown): string[] => {
      try {
        posterior(compiled, evidence as Evidence);
      } catch (error) {
        if (error instanceof EvidenceInputError || error instanceof ImpossibleEvidenceError)
          return error.problems.map((problem) => problem.code);
        throw error;
      }
      return [];
    };
    expect(codes({ nobody: 'yes', john: 'perhaps', mary: [1], alarm: [1, NaN] })).toEqual([
      'evidence-variable-unknown',
      'evidence-state-unknown',
      'evidence-likelihood-length',
      'evidence-likelihood-invalid',
    ]);
    expect(codes({ john: Object.assign(Array(2), { 0: 1 }), mary: ['1', '1'], alarm: null })).toEqual([
      'evidence-likelihood-invalid',
      'evidence-likelihood-invalid',
      'evidence-likelihood-length',
    ]);
    expect(codes({ john: [0, 0] })).toEqual(['evidence-impossible']);
    expect(() => jointPosterior(compiled, {}, ['john', 'john', 'x'])).toThrow(QueryError);
  });
});
