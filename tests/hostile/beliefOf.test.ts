import {
  compileModel,
  EvidenceError,
  advise,
  outcomeGivenCause,
  parseModel,
  rankCauses,
  beliefOf,
  type Facts,
} from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { pumpModel } from '../fixtures/pumpModel.ts';
import { damages, nested, poisons, seed } from './damage.ts';
import { verdictOn } from './expectRefusal.ts';

const compiled = compileModel(parseModel(pumpModel()));
const facts: Facts = {
  context: { filter: 'fitted', 'suction-hose': 'fitted' },
  observations: [
    { kind: 'result', id: 'r1', test: 'hum', outcome: 'hums', faultActive: 'yes', note: 'faint' },
    { kind: 'result', id: 'r2', test: 'vacuum', likelihood: { strong: 1, weak: 3 }, faultActive: 'unknown' },
    { kind: 'repair-tried', id: 'r3', repair: 'fit-fuse', cured: false },
    { kind: 'result', id: 'r4', test: 'filter-look', outcome: 'clean' },
  ],
};

/** Asks everything that takes facts. */
function believe(input: unknown): void {
  const belief = beliefOf(compiled, input as Facts);
  expect(Object.values(belief.posterior).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
  expect(rankCauses(compiled, input as Facts).posterior).toEqual(belief.posterior);
  expect(Number.isFinite(advise(compiled, belief).expectedCost.amount)).toBe(true);
}

test('the facts as they should be are accepted', () => {
  expect(verdictOn('whole', EvidenceError, () => believe(facts))).toBe('accepted');
});

test.each(Object.keys(poisons))('facts that are %s are refused', (name) => {
  expect(verdictOn(name, EvidenceError, () => believe(poisons[name]!()))).toBe('refused');
});

test('facts damaged in two thousand places are refused, or believed', () => {
  const all = damages(facts, 2000, seed);
  const verdicts = all.map(({ what, value }) => verdictOn(what, EvidenceError, () => believe(value)));
  const refused = verdicts.filter((verdict) => verdict === 'refused').length;
  console.log(`facts: ${refused} of ${all.length} damaged copies refused, seed ${seed}`);
  expect(refused).toBeGreaterThan(1400);
});

describe('each mistake is named where it is', () => {
  const result = { kind: 'result', id: 'r1', test: 'hum', outcome: 'hums' };
  test.each([
    ['no facts', null, 'type-wrong', ''],
    ['a list of observations alone', [result], 'type-wrong', ''],
    ['no observations', { context: {} }, 'value-missing', '/observations'],
    ['observations by name', { context: {}, observations: { r1: result } }, 'type-wrong', '/observations'],
    ['an answer that is a number', { context: { filter: 1 }, observations: [] }, 'type-wrong', '/context/filter'],
    [
      'an unknown question',
      JSON.parse('{ "context": { "__proto__": "fitted" }, "observations": [] }'),
      'feature-unknown',
      '/context/__proto__',
    ],
    ['an observation that is nothing', { context: {}, observations: [null] }, 'type-wrong', '/observations/0'],
    [
      'a kind nobody knows',
      { context: {}, observations: [{ ...result, kind: 'guess' }] },
      'type-wrong',
      '/observations/0/kind',
    ],
    [
      'a test nobody knows',
      { context: {}, observations: [{ ...result, test: 'toString' }] },
      'test-unknown',
      '/observations/0/test',
    ],
    [
      'an outcome of another test',
      { context: {}, observations: [{ ...result, outcome: 'blown' }] },
      'outcome-unknown',
      '/observations/0/outcome',
    ],
    [
      'an outcome and a likelihood',
      { context: {}, observations: [{ ...result, likelihood: { hums: 1 } }] },
      'outcome-missing',
      '/observations/0',
    ],
    [
      'a likelihood below zero',
      { context: {}, observations: [{ ...result, outcome: undefined, likelihood: { hums: -1, silent: 2 } }] },
      'likelihood-invalid',
      '/observations/0/likelihood/hums',
    ],
    [
      'a likelihood that is no number',
      { context: {}, observations: [{ ...result, outcome: undefined, likelihood: { hums: NaN } }] },
      'likelihood-invalid',
      '/observations/0/likelihood/hums',
    ],
    [
      'a likelihood above every ceiling',
      { context: {}, observations: [{ ...result, outcome: undefined, likelihood: { hums: 1e308, silent: 1e308 } }] },
      'likelihood-invalid',
      '/observations/0/likelihood/hums',
    ],
    [
      'a likelihood as a text',
      { context: {}, observations: [{ ...result, outcome: undefined, likelihood: { hums: '3' } }] },
      'type-wrong',
      '/observations/0/likelihood/hums',
    ],
    [
      'a likelihood of nothing',
      { context: {}, observations: [{ ...result, outcome: undefined, likelihood: { hums: -0 } }] },
      'likelihood-invalid',
      '/observations/0/likelihood',
    ],
    [
      'perhaps active',
      { context: {}, observations: [{ ...result, faultActive: 'perhaps' }] },
      'type-wrong',
      '/observations/0/faultActive',
    ],
    [
      'a test that does not apply',
      { context: {}, observations: [{ ...result, test: 'filter-look', outcome: 'clean' }] },
      'test-not-applicable',
      '/observations/0/test',
    ],
    [
      'cured by a text',
      { context: {}, observations: [{ kind: 'repair-tried', id: 'r1', repair: 'fit-fuse', cured: 'no' }] },
      'type-wrong',
      '/observations/0/cured',
    ],
    [
      'a repair nobody knows',
      { context: {}, observations: [{ kind: 'repair-tried', id: 'r1', repair: 'fit-fuze', cured: false }] },
      'repair-unknown',
      '/observations/0/repair',
    ],
  ])('%s', (_, input, code, path) => {
    expect(() => beliefOf(compiled, input as Facts)).toThrow(
      expect.objectContaining({ name: 'EvidenceError', code, path }),
    );
  });
});

test('all mistakes at once', () => {
  try {
    beliefOf(compiled, {
      context: { filter: 3, hose: null },
      observations: [null, { kind: 'result' }],
    } as unknown as Facts);
    expect.unreachable();
  } catch (error) {
    expect((error as EvidenceError).problems.map(({ path }) => path)).toEqual([
      '/context/filter',
      '/context/hose',
      '/observations/0',
      '/observations/1/id',
      '/observations/1/test',
    ]);
  }
});

test('likelihoods at the edge of what a number can hold are believed, at any scale', () => {
  const posterior = (strong: number, weak: number) =>
    beliefOf(compiled, {
      context: {},
      observations: [{ kind: 'result', id: 'r', test: 'vacuum', likelihood: { strong, weak } }],
    }).posterior;
  const plain = posterior(1, 3);
  for (const scale of [1e-300, 1e-150, 1e-9, 3e8]) {
    for (const [cause, p] of Object.entries(posterior(scale, 3 * scale))) expect(p).toBeCloseTo(plain[cause]!, 12);
  }
});

// the product of their weights is no number any more: the kernel refused it, untyped
test('a hundred likelihoods at the ceiling are believed as a hundred small ones are', () => {
  const posterior = (scale: number) =>
    beliefOf(compiled, {
      context: {},
      observations: Array.from({ length: 100 }, (_, at) => ({
        kind: 'result' as const,
        id: `r${at}`,
        test: 'vacuum',
        likelihood: { strong: 2 * scale, weak: 3 * scale },
      })),
    }).posterior;
  const plain = posterior(0.1);
  for (const [cause, p] of Object.entries(posterior(3e8))) expect(p).toBeCloseTo(plain[cause]!, 12);
});

test('ten thousand observations are believed', () => {
  const observations = Array.from({ length: 10_000 }, (_, at) => ({
    kind: 'result' as const,
    id: `r${at}`,
    test: 'hum',
    outcome: 'hums',
  }));
  const belief = beliefOf(compiled, { context: {}, observations });
  expect(Object.values(belief.posterior).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
});

test('names that every object has are no answers, tests or access', () => {
  const belief = beliefOf(compiled, facts);
  for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', '']) {
    expect(() => outcomeGivenCause(compiled, belief, name)).toThrow(expect.objectContaining({ code: 'test-unknown' }));
    expect(() => advise(compiled, belief, { openAccess: [name] })).toThrow(
      expect.objectContaining({ code: 'access-unknown', path: '/openAccess/0' }),
    );
  }
});

test('facts are neither changed nor kept open to change', () => {
  const own = structuredClone(facts) as { context: Record<string, string>; observations: unknown[] };
  const before = JSON.stringify(own);
  const belief = beliefOf(compiled, own as unknown as Facts);
  const posterior = JSON.stringify(belief.posterior);
  expect(JSON.stringify(own)).toBe(before);
  own.observations.push(nested(10));
  expect(JSON.stringify(belief.posterior)).toBe(posterior);
});
