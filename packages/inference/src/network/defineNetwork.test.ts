import { describe, expect, test } from 'vitest';
import { defineNetwork, NetworkError, type NetworkDefinition } from '../index.ts';

function faults(definition: unknown): { code: string; path: string; message: string }[] {
  try {
    defineNetwork(definition as NetworkDefinition);
  } catch (error) {
    if (error instanceof NetworkError)
      return error.problems.map(({ code, path, message }) => ({ code, path, message }));
    throw error;
  }
  return [];
}

const coin = { name: 'coin', states: ['heads', 'tails'], table: [0.5, 0.5] };

describe('a network definition', () => {
  test('that is sound is copied, in the author’s order', () => {
    const table = [0.9, 0.1, 0.2, 0.8];
    const network = defineNetwork({
      variables: [{ name: 'call', states: ['z', 'a'], parents: ['coin'], table }, coin],
    });
    table[0] = 7;
    expect(network.variables.map((variable) => variable.name)).toEqual(['call', 'coin']);
    expect(network.variables[0]!.states).toEqual(['z', 'a']);
    expect([...network.variables[0]!.table]).toEqual([0.9, 0.1, 0.2, 0.8]);
    expect(network.topologicalOrder).toEqual([1, 0]);
  });

  test('with rounded rows gets rows that sum to one', () => {
    const network = defineNetwork({
      variables: [{ name: 'die', states: ['a', 'b', 'c'], table: [0.3333333, 0.3333333, 0.3333333] }],
    });
    expect(network.variables[0]!.table[0]).toBeCloseTo(1 / 3, 15);
  });

  test.each([
    ['network-shape', '/variables', {}],
    ['network-shape', '/variables/0', { variables: [null] }],
    ['network-shape', '/variables/0', { variables: [{ name: 'x', states: 'ab', table: [] }] }],
    ['variable-name-empty', '/variables/0/name', { variables: [{ ...coin, name: '' }] }],
    ['variable-duplicate', '/variables/1/name', { variables: [coin, coin] }],
    ['state-missing', '/variables/0/states', { variables: [{ ...coin, states: [], table: [] }] }],
    ['state-duplicate', '/variables/0/states/1', { variables: [{ ...coin, states: ['a', 'a'] }] }],
    ['parent-unknown', '/variables/0/parents/0', { variables: [{ ...coin, parents: ['nobody'] }] }],
    [
      'parent-duplicate',
      '/variables/1/parents/1',
      { variables: [coin, { ...coin, name: 'b', parents: ['coin', 'coin'] }] },
    ],
    ['table-length', '/variables/0/table', { variables: [{ ...coin, table: [1] }] }],
    ['table-negative', '/variables/0/table/1', { variables: [{ ...coin, table: [1.5, -0.5] }] }],
    ['table-not-finite', '/variables/0/table/0', { variables: [{ ...coin, table: [NaN, 1] }] }],
    ['row-not-one', '/variables/0/table/0', { variables: [{ ...coin, table: [0.5, 0.4] }] }],
    ['cycle', '/variables/0/parents', { variables: [{ ...coin, parents: ['coin'], table: [0.5, 0.5, 0.5, 0.5] }] }],
  ])('%s is reported at %s', (code, path, definition) => {
    expect(faults(definition)).toContainEqual(expect.objectContaining({ code, path }));
  });

  test('with several faults gets all of them, rows named by their parents’ states', () => {
    const found = faults({
      variables: [
        { ...coin, table: [0.5, 0.6] },
        { name: 'call', states: ['y', 'n'], parents: ['coin'], table: [1, 0, 0.3, 0.3] },
      ],
    });
    expect(found.map((fault) => fault.code)).toEqual(['row-not-one', 'row-not-one']);
    expect(found[1]!.message).toContain('call | coin = tails');
  });
});
