import { expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import type { Problem } from '../errors/faultoddsError.ts';
import { ModelError } from '../errors/modelError.ts';
import { parseModel } from './parseModel.ts';

type Json = Record<string, unknown>;
const given = parseModel(misfire);
const testAt = given.tests.findIndex(({ id }) => id === 'cranking-compression');
const countsAt = given.tests.findIndex(({ id }) => id === 'misfire-counters');
const swapAt = given.tests.findIndex(({ id }) => id === 'coil-swap');

function problemsAfter(at: number, change: (reading: Json) => void): readonly Problem[] {
  const model = structuredClone(misfire) as { tests: { readings: Json[] }[] };
  change(model.tests[at]!.readings[0]!);
  try {
    parseModel(model);
  } catch (error) {
    if (error instanceof ModelError) return error.problems;
    throw error;
  }
  return [];
}

test('the misfire model has none', () => {
  expect(problemsAfter(testAt, () => undefined)).toEqual([]);
});

const rows = (reading: Json): { when: Json; p: Json }[] => reading['rows'] as { when: Json; p: Json }[];
const distributions = (reading: Json): Json[] => reading['distributions'] as Json[];

test.each<[string, number, (reading: Json) => void, string, string]>([
  ['a row that does not sum to one', testAt, (r) => (rows(r)[0]!.p = { leak: 0.5 }), 'row-not-one', '/rows/0/p'],
  [
    'a row of an unknown distribution',
    testAt,
    (r) => (rows(r)[0]!.p = { leek: 1 }),
    'distribution-unknown',
    '/rows/0/p/leek',
  ],
  [
    'an unknown mechanism',
    testAt,
    (r) => (rows(r)[0]!.when = { seal: ['tight'] }),
    'mechanism-unknown',
    '/rows/0/when/seal',
  ],
  [
    'an unknown state',
    testAt,
    (r) => (rows(r)[0]!.when = { sealing: ['tite'] }),
    'state-unknown',
    '/rows/0/when/sealing/0',
  ],
  [
    'a neighbour set aside though it reads no more than the others',
    testAt,
    (r) => (r['setAsideAbove'] = { best: 1, low: 1.2, high: 1.6, ess: 5, source: 'judgement' }),
    'too-small',
    '/setAsideAbove/best',
  ],
  [
    'limits of a reference that hold nothing',
    testAt,
    (r) => (r['referenceLimits'] = { low: 9, high: 9, source: 'judgement' }),
    'range-empty',
    '/referenceLimits',
  ],
  ['a default row that is not the last', testAt, (r) => (rows(r)[0]!.when = {}), 'default-row-not-last', '/rows/0'],
  ['no default row', testAt, (r) => rows(r).pop(), 'default-row-missing', '/rows'],
  [
    'a normal distribution without a spread',
    testAt,
    (r) => delete distributions(r)[0]!['sd'],
    'distribution-parameters',
    '/distributions/0',
  ],
  [
    'a gamma of mean zero',
    testAt,
    (r) => Object.assign(distributions(r)[0]!, { family: 'gamma', mean: 0, shape: 1 }),
    'distribution-parameters',
    '/distributions/0/mean',
  ],
  [
    'a distribution given twice',
    testAt,
    (r) => (distributions(r)[1]!['id'] = 'healthy'),
    'id-duplicate',
    '/distributions/1/id',
  ],
  ['an empty range', testAt, (r) => Object.assign(r['wild'] as Json, { high: 0 }), 'range-empty', '/wild'],
  [
    'a band of an unknown outcome',
    testAt,
    (r) => (r['bands'] = [{ outcomes: ['lowish'] }]),
    'outcome-unknown',
    '/bands/0/outcomes/0',
  ],
  ['an unknown comparison', testAt, (r) => (r['compare'] = 'by-eye'), 'value-unknown', '/compare'],
  [
    'a share of wild readings of nothing',
    testAt,
    (r) => Object.assign(r['wild'] as Json, { share: 0 }),
    'too-small',
    '/wild/share',
  ],
  [
    'a source that does not exist',
    testAt,
    (r) => (distributions(r)[0]!['source'] = 'hearsay'),
    'source-unknown',
    '/distributions/0/source',
  ],
  [
    'a pattern of an unknown outcome',
    countsAt,
    (r) => Object.assign(r['patterns'] as Json, { all: 'many' }),
    'outcome-unknown',
    '/patterns/all',
  ],
  [
    'a swap of an unknown outcome',
    swapAt,
    (r) => Object.assign(r['outcomes'] as Json, { follows: 'moves' }),
    'outcome-unknown',
    '/outcomes/follows',
  ],
])('%s is named at its place', (_, at, change, code, path) => {
  const found = problemsAfter(at, (reading) => void change(reading));
  expect(found.map((problem) => [problem.code, problem.path])).toContainEqual([code, `/tests/${at}/readings/0${path}`]);
});
