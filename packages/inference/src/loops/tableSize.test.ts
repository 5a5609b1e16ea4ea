import { expect, test } from 'vitest';
import { jointPosterior } from '../entries/analysis.ts';
import { compileNetwork, defineNetwork, TreeWidthError } from '../index.ts';
import { tableSize } from './tableSize.ts';

test('a table has an entry for every configuration of its variables; of none, one', () => {
  expect(tableSize([0, 2], [2, 5, 3])).toBe(6);
  expect(tableSize([], [2])).toBe(1);
});

// was 'Invalid typed array length'
test('the joint of forty variables is refused before a table is made', () => {
  const variables = Array.from({ length: 40 }, (_, at) => ({ name: `v${at}`, states: ['y', 'n'], table: [0.5, 0.5] }));
  const compiled = compileNetwork(defineNetwork({ variables }));
  const all = variables.map(({ name }) => name);
  expect(() => jointPosterior(compiled, {}, all)).toThrow(TreeWidthError);
  expect(jointPosterior(compiled, {}, all.slice(0, 3)).probabilities).toHaveLength(8);
});
