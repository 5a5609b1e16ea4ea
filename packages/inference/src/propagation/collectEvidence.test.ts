import { describe, expect, test } from 'vitest';
import { enumerateNetwork } from '../../../../tests/oracle/enumerateNetwork.ts';
import { createRandom, randomNetwork } from '../../../../tests/oracle/randomNetwork.ts';
import { defineNetwork } from '../network/defineNetwork.ts';
import { collectEvidence } from './collectEvidence.ts';
import { compileNetwork } from './compileNetwork.ts';
import { createPropagation, type Propagation } from './propagation.ts';
import { setFinding, setLikelihood } from './setFinding.ts';

const evidenceOf = (workspace: Propagation): number => {
  collectEvidence(workspace);
  return workspace.logEvidence[0]!;
};

/** A chain of variables with ten states: 0 and 1 are two classes of equal states, `stay` the chance that the next is of the same class. */
function chain(length: number, stay: (link: number) => number) {
  const states = Array.from({ length: 10 }, (_, s) => `s${s}`);
  const classOf = (s: number): number => (s < 4 ? 0 : 1); // four states of the first class, six of the second
  const within = [4, 6];
  return defineNetwork({
    variables: Array.from({ length }, (_, v) => ({
      name: `v${v}`,
      states,
      parents: v === 0 ? [] : [`v${v - 1}`],
      table:
        v === 0
          ? states.map((_s, s) => 0.5 / within[classOf(s)]!)
          : states.flatMap((_r, r) =>
              states.map((_s, s) => (classOf(s) === classOf(r) ? stay(v) : 1 - stay(v)) / within[classOf(s)]!),
            ),
    })),
  });
}

describe('a chain of four with ten states, each in the class of the one before with chance 0.9', () => {
  const workspace = createPropagation(compileNetwork(chain(4, () => 0.9)));

  test('is a tree of three cliques', () => {
    expect(workspace.compiled.tree.count).toBe(3);
    expect(workspace.compiled.isJoint).toBe(false);
  });

  test('without findings the evidence is sure', () => {
    expect(evidenceOf(workspace)).toBe(0);
  });

  test('of one finding it is its probability: half, shared by four', () => {
    setFinding(workspace, 3, 0);
    expect(evidenceOf(workspace)).toBeCloseTo(Math.log(0.5 / 4), 13);
  });

  test('of two at the ends it sums over what lies between', () => {
    // three links: the same class with 0.9^3 + 3 * 0.9 * 0.1^2 = 0.756
    setFinding(workspace, 0, 1);
    expect(evidenceOf(workspace)).toBeCloseTo(Math.log((0.5 / 4) * (0.756 / 4)), 13);
    setFinding(workspace, 3, 7);
    expect(evidenceOf(workspace)).toBeCloseTo(Math.log((0.5 / 4) * ((1 - 0.756) / 6)), 13);
  });

  test('a likelihood weighs the states it is over and keeps its scale', () => {
    setFinding(workspace, 0, -1);
    // the first class with 1, the second with 0.5, both times e^-7
    const weights = Float64Array.from({ length: 10 }, (_, s) => (s < 4 ? 1 : 0.5));
    setLikelihood(workspace, 3, weights, -7);
    expect(evidenceOf(workspace)).toBeCloseTo(Math.log(0.5 + 0.25) - 7, 13);
    setLikelihood(workspace, 1, weights, -2);
    // classes of the second and the fourth: equal with 0.9^2 + 0.1^2 = 0.82
    expect(evidenceOf(workspace)).toBeCloseTo(Math.log(0.41 + 0.41 / 4 + 0.18 / 2) - 9, 13);
  });

  test('what is taken back leaves nothing behind', () => {
    for (const v of [0, 1, 2, 3]) setFinding(workspace, v, -1);
    expect(evidenceOf(workspace)).toBe(0);
  });
});

test('findings that contradict each other are minus infinity, and possible again when one is taken back', () => {
  const workspace = createPropagation(compileNetwork(chain(4, () => 1)));
  setFinding(workspace, 0, 0);
  setFinding(workspace, 3, 9);
  expect(evidenceOf(workspace)).toBe(-Infinity);
  setFinding(workspace, 0, -1);
  expect(evidenceOf(workspace)).toBeCloseTo(Math.log(0.5 / 6), 13);
});

test('likelihoods on two variables of one clique may multiply to less than any double', () => {
  // both in the first class: half, and with 0.9 the same; each seen with 1e-200
  const workspace = createPropagation(compileNetwork(chain(4, () => 0.9)));
  const weights = Float64Array.from({ length: 10 }, (_, s) => (s < 4 ? 1e-200 : 0));
  for (const v of [0, 1]) setLikelihood(workspace, v, weights, 0);
  expect(evidenceOf(workspace) / (Math.log(0.5 * 0.9) + 2 * Math.log(1e-200))).toBeCloseTo(1, 14);
});

describe('a hub with twenty leaves', () => {
  const leaves = 20;
  const states = Array.from({ length: 20 }, (_, s) => `s${s}`);
  /** Every leaf shows its last state with `chance` given the hub's first state, with `other` given any other. */
  const hub = (chance: number, other: number) =>
    createPropagation(
      compileNetwork(
        defineNetwork({
          variables: [
            { name: 'hub', states, table: states.map(() => 1 / 20) },
            ...Array.from({ length: leaves }, (_, leaf) => ({
              name: `leaf${leaf}`,
              states,
              parents: ['hub'],
              table: states.flatMap((_s, h) => {
                const last = h === 0 ? chance : other;
                return states.map((_t, s) => (s === 19 ? last : (1 - last) / 19));
              }),
            })),
          ],
        }),
      ),
    );
  const allSeen = (workspace: Propagation): number => {
    for (let leaf = 1; leaf <= leaves; leaf += 1) setFinding(workspace, leaf, 19);
    return evidenceOf(workspace);
  };

  test('faint messages are scaled and their logarithms kept', () => {
    // (1/20) (1e-60)^20 + (19/20) (0.5e-60)^20
    const expected = 20 * Math.log(1e-60) + Math.log(0.05 + 0.95 * 0.5 ** 20);
    expect(allSeen(hub(1e-60, 0.5e-60)) / expected).toBeCloseTo(1, 14);
  });

  test('nothing is lost where numbers that meet multiply to less than any double', () => {
    // (1/20) (1e-40)^20: the others are much likelier at each leaf until one leaf rules them out
    const workspace = hub(1e-40, 0.5);
    expect(allSeen(workspace)).toBeCloseTo(Math.log(0.95) + 20 * Math.log(0.5), 12);
    setFinding(workspace, 0, 0);
    expect(evidenceOf(workspace) / (Math.log(0.05) + 20 * Math.log(1e-40))).toBeCloseTo(1, 14);
  });

  test('nor where likelihoods do', () => {
    const workspace = hub(1, 0.5);
    const weights = Float64Array.from(states, (_, s) => (s === 19 ? 1e-200 : 1));
    for (const leaf of [1, 2, 3]) setLikelihood(workspace, leaf, weights, 0);
    setFinding(workspace, 0, 0);
    expect(evidenceOf(workspace) / (Math.log(0.05) + 3 * Math.log(1e-200))).toBeCloseTo(1, 14);
    expect(workspace.now.doubtful).toBe(false);
    // the hub's first state, all others impossible, is lost where the messages meet: that is said, and over when it is taken back
    setFinding(workspace, 0, -1);
    setLikelihood(
      workspace,
      0,
      Float64Array.from(states, (_, h) => (h === 0 ? 1 : 0)),
      0,
    );
    collectEvidence(workspace);
    expect(workspace.now.doubtful).toBe(true);
    setFinding(workspace, 0, 0);
    expect(evidenceOf(workspace) / (Math.log(0.05) + 3 * Math.log(1e-200))).toBeCloseTo(1, 14);
    expect(workspace.now.doubtful).toBe(false);
  });
});

test('what nothing depends on passes on one number', () => {
  // the middle is seen: to the root goes P(the end | the middle) alone
  const workspace = createPropagation(compileNetwork(chain(5, () => 0.8)));
  for (const [v, s] of [
    [0, 0],
    [2, 0],
    [4, 9],
  ] as const)
    setFinding(workspace, v, s);
  // two links: the same class with 0.64 + 0.04
  expect(evidenceOf(workspace)).toBeCloseTo(Math.log((0.5 / 4) * (0.68 / 4) * (0.32 / 6)), 13);
});

test('by whatever steps findings came, their probability is that of the joint table', () => {
  for (let seed = 1; seed <= 12; seed += 1) {
    const random = createRandom(seed);
    const definition = randomNetwork(random, 8, 3, seed % 3 === 0 ? 0.15 : 0);
    const network = defineNetwork(definition);
    const joint = enumerateNetwork(definition);
    const workspace = createPropagation(compileNetwork(network));
    const seen = new Map<number, Float64Array>();
    for (let round = 0; round < 12; round += 1) {
      const v = Math.floor(random() * network.variables.length);
      const count = network.variables[v]!.states.length;
      const choice = random();
      if (choice < 0.3) {
        setFinding(workspace, v, -1);
        seen.delete(v);
      } else if (choice < 0.6) {
        const weights = Float64Array.from({ length: count }, random);
        setLikelihood(workspace, v, weights, 0);
        seen.set(v, weights);
      } else {
        const state = Math.floor(random() * count);
        setFinding(workspace, v, state);
        seen.set(
          v,
          Float64Array.from({ length: count }, (_, s) => Number(s === state)),
        );
      }
      let expected = 0;
      joint.forEach((p, entry) => {
        let rest = entry;
        let weight = p;
        for (let u = network.variables.length - 1; u >= 0; u -= 1) {
          const states = network.variables[u]!.states.length;
          weight *= seen.get(u)?.[rest % states] ?? 1;
          rest = Math.floor(rest / states);
        }
        expected += weight;
      });
      const found = evidenceOf(workspace);
      if (expected === 0) expect(found).toBe(-Infinity);
      else expect(found, `seed ${seed} round ${round}`).toBeCloseTo(Math.log(expected), 11);
    }
  }
});
