import { expect, test } from 'vitest';
import { randomNetwork, createRandom } from '../../../../tests/oracle/randomNetwork.ts';
import {
  compileNetwork,
  createPropagation,
  defineNetwork,
  propagate,
  propagateTo,
  setFinding,
  setLikelihood,
} from '../index.ts';

test('asking for all or for one in any order, findings given and taken back in between, equals a fresh workspace', () => {
  let compared = 0;
  for (let seed = 1; seed <= 24; seed += 1) {
    const random = createRandom(seed);
    // some are one small joint table, most are not; some have zeros
    const network = defineNetwork(randomNetwork(random, seed % 4 === 0 ? 5 : 13, 3, seed % 3 === 0 ? 0.15 : 0));
    const { variables } = network;
    const compiled = compileNetwork(network);
    const kept = createPropagation(compiled);
    for (let round = 0; round < 60; round += 1) {
      for (let changes = random() * 3; changes > 0; changes -= 1) {
        const v = Math.floor(random() * variables.length);
        const { length } = variables[v]!.states;
        const choice = random();
        if (choice < 0.15) setLikelihood(kept, v, Float64Array.from({ length }, random), -1);
        else setFinding(kept, v, choice < 0.45 ? -1 : Math.floor(random() * length));
      }
      const fresh = createPropagation(compiled);
      variables.forEach(({ states }, v) => {
        const at = compiled.marginAt[v]!;
        if (kept.soft[v] === 1) setLikelihood(fresh, v, kept.weights.slice(at, at + states.length), -1);
        else setFinding(fresh, v, kept.states[v]!);
      });
      const one = random() < 0.5 ? Math.floor(random() * variables.length) : -1;
      const possible = one < 0 ? propagate(kept) : propagateTo(kept, one);
      expect(possible, `seed ${seed} round ${round}`).toBe(propagate(fresh));
      if (!possible) continue;
      expect(kept.logEvidence[0], `seed ${seed} round ${round}`).toBeCloseTo(fresh.logEvidence[0]!, 12);
      variables.forEach((_, v) => {
        if (one >= 0 && one !== v) return;
        for (let k = compiled.marginAt[v]!; k < compiled.marginAt[v + 1]!; k += 1) {
          expect(kept.marginals[k], `seed ${seed} round ${round} of ${v}`).toBeCloseTo(fresh.marginals[k]!, 13);
          compared += 1;
        }
      });
    }
  }
  expect(compared).toBeGreaterThan(10_000);
});

test('a small network whose numbers multiply to less than any double still answers', () => {
  const states = ['yes', 'no'];
  const clue = (name: string) => ({ name, states, parents: ['fault'], table: [1e-160, 1, 2e-160, 1] });
  const network = defineNetwork({
    variables: [{ name: 'fault', states, table: [0.5, 0.5] }, ...['a', 'b', 'c'].map(clue)],
  });
  const workspace = createPropagation(compileNetwork(network));
  for (const v of [1, 2, 3]) setFinding(workspace, v, 0);
  expect(propagate(workspace)).toBe(true);
  // by hand: odds 1 : 8
  expect(workspace.marginals[0]).toBeCloseTo(1 / 9, 13);
  expect(workspace.logEvidence[0]! / (Math.log(4.5) + 3 * Math.log(1e-160))).toBeCloseTo(1, 12);
});
