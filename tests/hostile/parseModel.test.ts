import { compileModel, EvidenceError, ModelError, advise, parseModel, beliefOf, type Model } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { pumpModel } from '../fixtures/pumpModel.ts';
import { damages, nested, poisons, seed } from './damage.ts';
import { verdictOn, type Verdict } from './expectRefusal.ts';

/** Parses; what is accepted must also compute: finite, sums to one, or says why not. */
function parseAndUse(what: string, input: unknown): Verdict {
  let model: Model | undefined;
  const verdict = verdictOn(what, ModelError, () => {
    model = parseModel(input);
  });
  if (model === undefined) return verdict;
  const accepted = model;
  verdictOn(`${what}, then used`, EvidenceError, () => {
    const compiled = compileModel(accepted);
    const belief = beliefOf(compiled, { context: {}, observations: [] });
    const sum = Object.values(belief.posterior).reduce((a, b) => a + b, 0);
    expect(sum, what).toBeCloseTo(1, 9);
    const advice = advise(compiled, belief);
    expect(
      JSON.stringify(advice.tests.map((one) => [one.netValue.amount, one.informationGainBits])),
      what,
    ).not.toContain('null');
    expect(Number.isFinite(advice.expectedCost.amount), what).toBe(true);
  });
  return verdict;
}

test.each(Object.keys(poisons))('a model that is %s is refused', (name) => {
  expect(verdictOn(name, ModelError, () => parseModel(poisons[name]!()))).toBe('refused');
});

test('a small model damaged in a thousand places is refused, or works', () => {
  const verdicts = damages(pumpModel(), 1000, seed).map(({ what, value }) => parseAndUse(what, value));
  const refused = verdicts.filter((verdict) => verdict === 'refused').length;
  console.log(`small model: ${refused} of ${verdicts.length} damaged copies refused, seed ${seed}`);
  expect(refused).toBeGreaterThan(800); // the rest are texts and numbers that may well be so
});

test('the misfire model damaged in sixty places is refused, or works', () => {
  const verdicts = damages(misfire, 60, seed + 1).map(({ what, value }) => parseAndUse(what, value));
  expect(verdicts.filter((verdict) => verdict === 'refused').length).toBeGreaterThan(45);
});

describe('what a shape cannot say is said too', () => {
  const pump = pumpModel();
  const cases: readonly (readonly [string, Partial<Model>, string, string])[] = [
    [
      'a cause named as a part of every object',
      { causes: pump.causes.map((one, at) => (at === 0 ? { ...one, id: 'constructor' } : one)) },
      'id-malformed',
      '/causes/0/id',
    ],
    [
      'a chance of success above one',
      {
        repairs: pump.repairs.map((one) => ({
          ...one,
          cures: { 'fuse-blown': { ...one.minutes, best: 2, high: 2, low: 1 } },
        })),
      },
      'too-big',
      '/repairs/0/cures/fuse-blown/best',
    ],
    [
      'a weight beyond all bounds',
      {
        causes: pump.causes.map((one, at) =>
          at === 1 ? { ...one, weight: { ...one.weight, best: 1e308, high: 1e308 } } : one,
        ),
      },
      'too-big',
      '/causes/1/weight/best',
    ],
    [
      'a cap that holds no 1',
      { contextCap: { ...pump.contextCap, low: 2, high: 1 } },
      'range-disordered',
      '/contextCap',
    ],
    [
      'access in a circle',
      { access: pump.access.map((one) => (one.id === 'lid-off' ? { ...one, requires: ['wheel-out'] } : one)) },
      'access-cycle',
      '/access/1/requires',
    ],
    [
      'more access than can be kept',
      {
        access: [...pump.access, ...Array.from({ length: 40 }, (_, at) => ({ ...pump.access[0]!, id: `more-${at}` }))],
      },
      'access-too-many',
      '/access',
    ],
  ];
  test.each(cases)('%s', (_, part, code, path) => {
    try {
      parseModel({ ...pump, ...part });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(ModelError);
      expect((error as ModelError).problems).toContainEqual(expect.objectContaining({ code, path }));
    }
  });

  test('a test over so many mechanisms that its table would fill the memory', () => {
    const mechanisms = Array.from({ length: 24 }, (_, at) => ({ ...pump.mechanisms[0]!, id: `m${at}` }));
    const when = Object.fromEntries(mechanisms.map(({ id }) => [id, ['turning']]));
    const row = pump.tests[0]!.rows[0]!;
    const tests = pump.tests.map((one, at) =>
      at === 0 ? { ...one, rows: [{ ...row, when }, ...one.rows.slice(-1)] } : one,
    );
    expect(() => parseModel({ ...pump, mechanisms: [...pump.mechanisms, ...mechanisms], tests })).toThrow(
      expect.objectContaining({ code: 'table-too-large', path: '/tests/0' }),
    );
  });

  test('a test of more rows than can be numbered', () => {
    const row = pump.tests[0]!.rows[0]!;
    const rows = [...Array.from({ length: 40_000 }, () => row), ...pump.tests[0]!.rows.slice(-1)];
    const tests = pump.tests.map((one, at) => (at === 0 ? { ...one, rows } : one));
    expect(() => parseModel({ ...pump, tests })).toThrow(
      expect.objectContaining({ code: 'table-too-large', path: '/tests/0/rows' }),
    );
  });

  test('every mistake is reported, not the first', () => {
    const broken = { ...pump, title: 3, labourPerHour: { best: 'much' }, causes: [{}, ...pump.causes] };
    try {
      parseModel(broken);
      expect.unreachable();
    } catch (error) {
      const paths = (error as ModelError).problems.map(({ path }) => path);
      expect(paths).toContain('/title');
      expect(paths).toContain('/labourPerHour/best');
      expect(paths).toContain('/causes/0/id');
      expect(paths.length).toBeGreaterThan(10);
    }
  });
});

test('a model of a hundred thousand glossary entries parses, one nested a million deep is refused', () => {
  const pump = pumpModel();
  const glossary = Array.from({ length: 100_000 }, (_, at) => ({ term: `term ${at}`, meaning: 'long' }));
  expect(parseModel({ ...pump, glossary }).glossary.length).toBe(100_000);
  expect(verdictOn('a million deep', ModelError, () => parseModel({ ...pump, glossary: nested(1_000_000) }))).toBe(
    'refused',
  );
});

test('a model whose every cause is excluded says so instead of dividing by zero', () => {
  const pump = pumpModel();
  const none = pump.causes.map((one) => ({ ...one, weight: { ...one.weight, best: 0, low: 0 } }));
  const compiled = compileModel(parseModel({ ...pump, causes: none }));
  expect(() => beliefOf(compiled, { context: {}, observations: [] })).toThrow(
    expect.objectContaining({ name: 'EvidenceError', code: 'evidence-impossible', path: '/context' }),
  );
});
