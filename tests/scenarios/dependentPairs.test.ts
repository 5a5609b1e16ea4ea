// Pairs of evidence that hang together, as the knowledge gives them: what belief and advice make of their kind, and of their kind alone.
import { compileModel, advise, parseModel, beliefOf, type Facts, type Model } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';

const model = parseModel(misfire);
const replaced: Facts = {
  context: {},
  observations: [{ kind: 'repair-tried', id: 'r1', repair: 'replace-coil', cured: false }],
};
const answersTo = (of: Model): { readonly notNow: readonly string[]; readonly warnings: readonly string[] } => {
  const compiled = compileModel(of);
  const belief = beliefOf(compiled, replaced);
  const both = beliefOf(compiled, {
    ...replaced,
    observations: [...replaced.observations, { kind: 'result', id: 'r2', test: 'coil-swap', outcome: 'stays' }],
  });
  return {
    notNow: advise(compiled, belief).notNow.flatMap(({ test: id, reason }) => (reason === 'same-question' ? [id] : [])),
    warnings: both.warnings.map(({ kind, items }) => `${kind}: ${items.join(', ')}`),
  };
};

test('after the coil was replaced its swap is not proposed, and warned of when it is entered all the same', () => {
  expect(answersTo(model)).toEqual({ notNow: ['coil-swap'], warnings: ['same-question: r2, r1'] });
});

test('notes are for people: other words, or each under another pair, decide nothing', () => {
  const notes = model.dependentPairs.map(({ note }) => note);
  const reworded = (noteOf: (at: number) => string): Model => ({
    ...model,
    dependentPairs: model.dependentPairs.map((pair, at) => ({ ...pair, note: noteOf(at) })),
  });
  expect(answersTo(reworded(() => 'handled by nothing in particular'))).toEqual(answersTo(model));
  expect(answersTo(reworded((at) => notes[notes.length - 1 - at]!))).toEqual(answersTo(model));
});

test('each part that the trade can swap is asked about once: swapped or replaced', () => {
  const asked = model.dependentPairs.filter(({ kind }) => kind === 'same-question').map(({ a, b }) => `${a}, ${b}`);
  expect(asked).toEqual(['coil-swap, coil-replaced', 'plug-swap, plug-replaced', 'injector-swap, injector-replaced']);
});
