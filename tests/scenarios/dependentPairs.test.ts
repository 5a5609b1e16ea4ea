// Pairs of evidence that hang together, as the knowledge gives them: what belief and advice make of their kind, and of their kind alone.
import { advise, beliefOf, compileModel, parseModel, questionsToAsk, type Facts, type Model } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';

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

test('each part that the trade can swap is asked about once, swapped or replaced, and the pattern by the customer or the frozen data', () => {
  const asked = model.dependentPairs.filter(({ kind }) => kind === 'same-question').map(({ a, b }) => `${a}, ${b}`);
  expect(asked).toEqual([
    'coil-swap, coil-replaced',
    'plug-swap, plug-replaced',
    'injector-swap, injector-replaced',
    'freeze-frame, pattern',
  ]);
});

describe('what asks one question shares one likelihood', () => {
  const compiled = compileModel(model);
  const seen = (...named: readonly (readonly [test: string, outcome: string])[]) =>
    named.map(([id, outcome], at) => ({ kind: 'result', id: `s${at}`, test: id, outcome }) as const);
  const posterior = (context: Facts['context'], observations: Facts['observations']) =>
    beliefOf(compiled, { context, observations }).posterior;

  test('a coil swapped and renewed speaks against the coil by little more than one of them, whichever way it is entered', () => {
    const odds = (...named: readonly (readonly [string, string])[]) => {
      const p = posterior({}, seen(...named))['coil-weak']!;
      return p / (1 - p);
    };
    const [none, swap, renewed] = [odds(), odds(['coil-swap', 'stays']), odds(['coil-replaced', 'misfire-stays'])];
    const both = odds(['coil-swap', 'stays'], ['coil-replaced', 'misfire-stays']);
    expect(both).toBeLessThan(Math.max(swap, renewed));
    expect(both).toBeGreaterThan((swap * renewed) / none); // as if they were two questions
    expect(both / none).toBeGreaterThan(((swap / none) * (renewed / none)) ** 0.75);
    const tried = { kind: 'repair-tried', id: 'r', repair: 'replace-coil', cured: false } as const;
    const entered = posterior({}, [...seen(['coil-swap', 'stays']), tried]);
    expect(entered['coil-weak']! / (1 - entered['coil-weak']!)).toBeCloseTo(both, 12);
  });

  test('the pattern the customer tells and the one that is frozen are one, and neither is asked after the other', () => {
    const pattern = { pattern: 'high-rpm-only' };
    const frozen = seen(['freeze-frame', 'high-rpm']);
    const [told, read, both] = [posterior(pattern, []), posterior({}, frozen), posterior(pattern, frozen)].map(
      (p) => p['spring-broken']!,
    );
    const none = posterior({}, [])['spring-broken']!;
    const odds = (p: number | undefined): number => p! / (1 - p!);
    expect(both).toBeLessThan((odds(told) * odds(read)) / odds(none));
    expect(odds(both) / odds(none)).toBeLessThan(Math.max(odds(told), odds(read)) / odds(none) + 6);
    const belief = beliefOf(compiled, { context: pattern, observations: [] });
    expect(advise(compiled, belief).notNow).toContainEqual(
      expect.objectContaining({ test: 'freeze-frame', reason: 'same-question', missing: ['pattern'] }),
    );
    const asked = questionsToAsk(compiled, { context: {}, observations: frozen }).map(({ feature }) => feature);
    expect(asked).not.toContain('pattern');
  });
});
