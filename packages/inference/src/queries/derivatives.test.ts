import { describe, expect, test } from 'vitest';
import { enumerateNetwork } from '../../../../tests/oracle/enumerateNetwork.ts';
import { randomNetwork, createRandom } from '../../../../tests/oracle/randomNetwork.ts';
import { compileNetwork, defineNetwork, ImpossibleEvidenceError } from '../index.ts';
import { derivatives } from '../entries/analysis.ts';

describe('derivatives of P(evidence)', () => {
  test('equal differences of the enumerated sum, which is linear in every number, zeros included', () => {
    for (let seed = 1; seed <= 25; seed += 1) {
      const random = createRandom(seed);
      const definition = randomNetwork(random, 2 + Math.floor(random() * 5), 3, seed % 2 === 0 ? 0.3 : 0);
      const evidence: Record<string, string | number[]> = {};
      const weights: { variables: string[]; values: number[] }[] = [];
      for (const variable of definition.variables) {
        const choice = random();
        if (choice > 0.6) continue;
        const hard = Math.floor(random() * variable.states.length);
        const values = variable.states.map((_, s) => (choice < 0.3 ? Number(s === hard) : 3 * random()));
        evidence[variable.name] = choice < 0.3 ? variable.states[hard]! : values;
        weights.push({ variables: [variable.name], values });
      }
      const total = enumerateNetwork(definition, weights).reduce((sum, value) => sum + value, 0);
      const compiled = compileNetwork(defineNetwork(definition));
      if (total === 0) {
        expect(() => derivatives(compiled, evidence)).toThrow(ImpossibleEvidenceError);
        continue;
      }
      const answer = derivatives(compiled, evidence);
      expect(answer.logProbabilityOfEvidence).toBeCloseTo(Math.log(total), 11);
      definition.variables.forEach((variable, index) => {
        for (let at = 0; at < variable.table.length; at += 1) {
          const table = Float64Array.from(variable.table);
          table[at]! += 1;
          const moved = { variables: definition.variables.with(index, { ...variable, table }) };
          const difference = enumerateNetwork(moved, weights).reduce((sum, value) => sum + value, 0) - total;
          expect(answer.relative[variable.name]![at], `seed ${seed} ${variable.name} ${at}`).toBeCloseTo(
            difference / total,
            9,
          );
        }
      });
    }
  });
});
