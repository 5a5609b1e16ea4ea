import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { outcomeGivenCause } from '../belief/outcomeGivenCause.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from './compileModel.ts';
import { findCycle } from '../model/findCycle.ts';
import { fillTable, firstMatches } from './firstMatches.ts';
import { lintModel } from './lintModel.ts';
import { parseModel } from '../model/parseModel.ts';

const row = (p: Record<string, number>) => ({ p, ess: 1, source: 's' });
const rain = [['wet'], ['dry']];

describe('the table that rows mean', () => {
  const parents = [
    { id: 'rain', states: rain },
    { id: 'wind', states: [['calm'], ['gale']] },
  ];
  const rows = [
    { when: { rain: ['wet'], wind: ['gale'] }, ...row({ stay: 0.9, go: 0.1 }) },
    { when: { rain: ['wet'] }, ...row({ stay: 0.6, go: 0.4 }) },
    { when: {}, ...row({ stay: 0.2, go: 0.8 }) },
  ];

  test('the first row that fits applies; own state runs fastest, then the last parent', () => {
    const matches = firstMatches(parents, rows);
    expect([...matches.rowOf]).toEqual([1, 0, 2, 2]);
    expect([...fillTable(matches, rows, ['stay', 'go'])]).toEqual([0.6, 0.4, 0.9, 0.1, 0.2, 0.8, 0.2, 0.8]);
  });

  test('the order of own states is the one asked for', () => {
    expect([...fillTable(firstMatches(parents, rows), rows, ['go', 'stay'])].slice(0, 2)).toEqual([0.4, 0.6]);
  });

  test('without parents it is the default row', () => {
    const only = rows.slice(-1);
    expect([...fillTable(firstMatches([], only), only, ['stay', 'go'])]).toEqual([0.2, 0.8]);
  });

  test('a state that stands for two ids matches where either does', () => {
    const both = firstMatches([{ id: 'rain', states: [['dry'], ['dry', 'wet']] }], rows.slice(1));
    expect([...both.rowOf]).toEqual([1, 0]);
  });
});

describe('cycles', () => {
  test('are found with the way round', () => {
    expect(
      findCycle(
        new Map([
          ['a', ['b']],
          ['b', ['c']],
          ['c', ['b']],
        ]),
      ),
    ).toEqual(['b', 'c', 'b']);
    expect(findCycle(new Map([['a', ['a']]]))).toEqual(['a', 'a']);
  });

  test('are not seen where two ways lead to one place', () => {
    expect(
      findCycle(
        new Map([
          ['a', ['b', 'c']],
          ['b', ['d']],
          ['c', ['d']],
          ['d', []],
        ]),
      ),
    ).toBeUndefined();
    expect(findCycle(new Map([['a', ['nowhere']]]))).toBeUndefined();
  });
});

describe('a compiled model', () => {
  const compiled = compileModel(deepFreeze(parseModel(pumpModel())));

  test('keeps the author’s order of causes', () => {
    expect(compiled.causes).toEqual(['fuse-blown', 'motor-worn', 'hose-leak', 'clogged', 'not-listed']);
  });

  test('gives P(outcome | cause) as a mechanic would work it out by hand', () => {
    const given = outcomeGivenCause(compiled, beliefOf(compiled, { context: {}, observations: [] }), 'hum');
    // fuse blown: the drive turns in 2 of 100, and then it hums in 90 of 100; else in 15 of 100
    expect(given['fuse-blown']!['hums']).toBeCloseTo(0.02 * 0.9 + 0.98 * 0.15, 12);
    // a leaking hose leaves the drive as it is in the background
    expect(given['hose-leak']!['hums']).toBeCloseTo(0.95 * 0.9 + 0.05 * 0.15, 12);
    for (const outcomes of Object.values(given)) expect(outcomes['hums']! + outcomes['silent']!).toBeCloseTo(1, 12);
  });
});

describe('lint', () => {
  test('a pair of causes that no test tells apart is reported with the best there is', () => {
    const found = lintModel(compileModel(pumpModel())).filter(({ code }) => code === 'causes-not-separated');
    expect(found.some(({ message }) => message.includes(`'hose-leak' and 'not-listed'`))).toBe(true);
    expect(
      found.every(({ message }) => /the best, '[a-z-]+', tells them apart in \d+ of 100 cases/.test(message)),
    ).toBe(true);
  });

  test('a test that says nothing, a row never used, a weight and a number of the whole model without a range', () => {
    const pump = pumpModel();
    const [hum, vacuum, ...others] = pump.tests;
    const findings = lintModel(
      compileModel({
        ...pump,
        leastRepairMinutes: { best: 6, low: 6, high: 6, ess: 5, source: 'judgement' },
        needlessOpening: { best: 50, low: 50, high: 50, ess: 5, source: 'judgement' },
        causes: pump.causes.map((one, at) =>
          at === 0 ? { ...one, weight: { ...one.weight, low: 400, high: 400 } } : one,
        ),
        tests: [
          { ...hum!, rows: [{ ...hum!.rows[0]!, when: { drive: ['turning', 'standing'] } }, ...hum!.rows] },
          { ...vacuum!, rows: [{ when: {}, ...row({ strong: 0.5, weak: 0.5 }) }] },
          ...others,
        ],
      }),
    );
    expect(findings).toContainEqual(expect.objectContaining({ code: 'row-never-used', path: '/tests/0/rows/1' }));
    expect(findings).toContainEqual(expect.objectContaining({ code: 'test-says-nothing', path: '/tests/1' }));
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'weight-without-range', path: '/causes/0/weight' }),
    );
    expect(findings.filter(({ code }) => code === 'number-without-range')).toEqual([
      { code: 'number-without-range', path: '/leastRepairMinutes', message: `'leastRepairMinutes' has no range` },
      { code: 'number-without-range', path: '/needlessOpening', message: `'needlessOpening' has no range` },
    ]);
  });
});
