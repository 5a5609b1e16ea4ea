import { describe, expect, test } from 'vitest';
import { enumerateNetwork, sumTo } from '../../../../tests/oracle/enumerateNetwork.ts';
import { randomNetwork, randomRows, createRandom } from '../../../../tests/oracle/randomNetwork.ts';
import { compileSweep, QueryError, sweepRoot, type LikelihoodFactor, type TargetTable } from '../entries/sweeps.ts';
import { defineNetwork, type VariableDefinition } from '../index.ts';

function draw<T>(random: () => number, items: readonly T[], count: number): T[] {
  const rest = [...items];
  return Array.from(
    { length: Math.min(count, rest.length) },
    () => rest.splice(Math.floor(random() * rest.length), 1)[0]!,
  );
}

describe('a sweep over the root', () => {
  test('equals enumeration on random networks, factors and targets', () => {
    for (let seed = 1; seed <= 80; seed += 1) {
      const random = createRandom(seed);
      const definition = randomNetwork(random, 2 + Math.floor(random() * 5), 3, seed % 4 === 0 ? 0.3 : 0);
      const root = definition.variables.find((variable) => (variable.parents ?? []).length === 0)!;
      const sizeOf = (variables: readonly VariableDefinition[]): number =>
        variables.reduce((size, variable) => size * variable.states.length, 1);
      const likelihoods: LikelihoodFactor[] = Array.from({ length: Math.floor(random() * 4) }, () => {
        const over = draw(random, definition.variables, 1 + Math.floor(random() * 3));
        return {
          variables: over.map((variable) => variable.name),
          values: Float64Array.from({ length: sizeOf(over) }, () => (random() < 0.2 ? 0 : random() * 5)),
        };
      });
      const targets: TargetTable[] = Array.from({ length: 5 }, (_, k) => {
        const over = draw(random, definition.variables, Math.floor(random() * 4));
        const states = 1 + Math.floor(random() * 3);
        return {
          id: `t${k}`,
          parents: over.map((variable) => variable.name),
          states,
          table: randomRows(random, sizeOf(over), states),
        };
      });
      const posteriorsOf = definition.variables.map((variable) => variable.name);
      const sweep = compileSweep(defineNetwork(definition), { root: root.name });
      const result = sweepRoot(sweep, { likelihoods, targets, posteriorsOf });
      const joint = enumerateNetwork(definition, likelihoods);
      const given = sumTo(definition, joint, [root.name]);
      root.states.forEach((_, r) => {
        const prior = root.table[r]!;
        if (prior === 0) return;
        const evidence = given[r]! / prior;
        const where = `seed ${seed} root ${r}`;
        if (evidence === 0) expect(result.logEvidenceGivenRoot[r], where).toBe(-Infinity);
        else expect(result.logEvidenceGivenRoot[r], where).toBeCloseTo(Math.log(evidence), 11);
        for (const target of targets) {
          const table = sumTo(definition, joint, [root.name, ...target.parents.filter((name) => name !== root.name)]);
          const rows = table.length / root.states.length;
          for (let s = 0; s < target.states; s += 1) {
            let expected = 0;
            for (let u = 0; u < rows; u += 1)
              expected += table[r * rows + u]! * childGiven(definition.variables, target, root, r, u, s);
            const got = result.targets.get(target.id)![r * target.states + s]!;
            expect(got, `${where} ${target.id}`).toBeCloseTo(
              evidence === 0 ? 1 / target.states : expected / given[r]!,
              12,
            );
          }
        }
        for (const variable of definition.variables.filter((other) => other !== root)) {
          const table = sumTo(definition, joint, [root.name, variable.name]);
          const n = variable.states.length;
          variable.states.forEach((__, s) => {
            expect(result.posteriors.get(variable.name)![r * n + s], where).toBeCloseTo(
              evidence === 0 ? 1 / n : table[r * n + s]! / given[r]!,
              12,
            );
          });
        }
      });
    }
  });

  test('keeps the scale of 120 small likelihoods, per root state', () => {
    const network = defineNetwork({
      variables: [
        { name: 'cause', states: ['a', 'b'], table: [0.5, 0.5] },
        { name: 'part', states: ['ok', 'bad'], parents: ['cause'], table: [1, 0, 0, 1] },
      ],
    });
    const likelihoods = Array.from({ length: 120 }, () => ({
      variables: ['part'],
      values: Float64Array.of(1e-3, 1e-7),
    }));
    const { logEvidenceGivenRoot } = sweepRoot(compileSweep(network, { root: 'cause' }), { likelihoods, targets: [] });
    expect(logEvidenceGivenRoot[0]! / (120 * Math.log(1e-3))).toBeCloseTo(1, 12);
    expect(logEvidenceGivenRoot[1]! / (120 * Math.log(1e-7))).toBeCloseTo(1, 12);
  });

  test('forgets nothing when 150 findings speak for one state and 150 as strongly for the other', () => {
    const network = defineNetwork({
      variables: [
        { name: 'cause', states: ['a', 'b'], table: [0.5, 0.5] },
        { name: 'part', states: ['ok', 'bad'], parents: ['cause'], table: [0.25, 0.75, 0.5, 0.5] },
      ],
    });
    const towards = (ok: number, bad: number): LikelihoodFactor => ({
      variables: ['part'],
      values: Float64Array.of(ok, bad),
    });
    const likelihoods = [
      ...Array.from({ length: 150 }, () => towards(1, 1e-4)),
      ...Array.from({ length: 150 }, () => towards(1e-4, 1)),
    ];
    const result = sweepRoot(compileSweep(network, { root: 'cause' }), {
      likelihoods,
      targets: [],
      posteriorsOf: ['part'],
    });
    expect(result.posteriors.get('part')![0]).toBeCloseTo(0.25, 10);
    expect(result.posteriors.get('part')![2]).toBeCloseTo(0.5, 10);
    expect(result.logEvidenceGivenRoot[0]! / (150 * Math.log(1e-4))).toBeCloseTo(1, 12);
  });

  test('asking again, and asking with one likelihood more, equals asking afresh', () => {
    const random = createRandom(7);
    const definition = randomNetwork(random, 7, 2);
    const root = definition.variables.find((variable) => (variable.parents ?? []).length === 0)!;
    const network = defineNetwork(definition);
    const pool: LikelihoodFactor[] = Array.from({ length: 12 }, () => {
      const over = draw(random, definition.variables, 2);
      return {
        variables: over.map((v) => v.name),
        values: Float64Array.from({ length: over.reduce((n, v) => n * v.states.length, 1) }, random),
      };
    });
    const posteriorsOf = definition.variables.map((variable) => variable.name);
    const kept = compileSweep(network, { root: root.name, memoryLimitBytes: 4096 });
    for (let round = 0; round < 60; round += 1) {
      const likelihoods = draw(random, pool, Math.floor(random() * 6));
      const again = sweepRoot(kept, { likelihoods, targets: [], posteriorsOf });
      const afresh = sweepRoot(compileSweep(network, { root: root.name }), { likelihoods, targets: [], posteriorsOf });
      expect([...again.logEvidenceGivenRoot]).toEqual([...afresh.logEvidenceGivenRoot]);
      for (const name of posteriorsOf)
        expect([...again.posteriors.get(name)!]).toEqual([...afresh.posteriors.get(name)!]);
    }
  });

  test('refuses what does not fit, by code', () => {
    const network = defineNetwork({
      variables: [
        { name: 'cause', states: ['a', 'b'], table: [0.5, 0.5] },
        { name: 'part', states: ['ok', 'bad'], parents: ['cause'], table: [1, 0, 0, 1] },
      ],
    });
    const sweep = compileSweep(network, { root: 'cause' });
    const code = (ask: () => unknown): string => {
      try {
        ask();
      } catch (error) {
        if (error instanceof QueryError) return error.code;
        throw error;
      }
      return 'none';
    };
    const target = { id: 't', parents: ['part'], states: 2, table: Float64Array.of(1, 0, 0, 1) };
    expect(code(() => compileSweep(network, { root: 'part' }))).toBe('root-has-parents');
    expect(
      code(() => sweepRoot(sweep, { likelihoods: [{ variables: ['x'], values: Float64Array.of(1) }], targets: [] })),
    ).toBe('query-variable-unknown');
    expect(
      code(() => sweepRoot(sweep, { likelihoods: [{ variables: ['part'], values: Float64Array.of(1) }], targets: [] })),
    ).toBe('factor-length');
    expect(
      code(() =>
        sweepRoot(sweep, { likelihoods: [{ variables: ['part'], values: Float64Array.of(1, -1) }], targets: [] }),
      ),
    ).toBe('factor-invalid');
    expect(code(() => sweepRoot(sweep, { likelihoods: [], targets: [target, target] }))).toBe('target-duplicate');
    expect(code(() => sweepRoot(sweep, { likelihoods: [], targets: [{ ...target, states: 3 }] }))).toBe(
      'target-length',
    );
    expect(
      code(() => sweepRoot(sweep, { likelihoods: [], targets: [{ ...target, table: Float64Array.of(1, 0, 0, 0.5) }] })),
    ).toBe('target-row-not-one');
  });
});

/** target.table looked up for root state r and the u-th configuration of the other parents. */
function childGiven(
  variables: readonly VariableDefinition[],
  target: TargetTable,
  root: VariableDefinition,
  r: number,
  u: number,
  s: number,
): number {
  const size = (name: string): number => variables.find((variable) => variable.name === name)!.states.length;
  const others = target.parents.filter((name) => name !== root.name);
  const states = new Map([[root.name, r]]);
  let rest = u;
  for (const name of [...others].reverse()) {
    states.set(name, rest % size(name));
    rest = Math.floor(rest / size(name));
  }
  let row = 0;
  for (const name of target.parents) row = row * size(name) + states.get(name)!;
  return target.table[row * target.states + s]!;
}
