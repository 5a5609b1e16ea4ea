import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import type { Belief } from '../belief/belief.ts';
import { diagnosability } from '../diagnosability/diagnosability.ts';
import { adviceStability } from '../doubt/adviceStability.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { FaultoddsError } from '../errors/faultoddsError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { advise } from '../advice/advise.ts';
import { repairOrTest } from '../advice/repairOrTest.ts';
import { whatWouldItTake } from '../advice/whatWouldItTake.ts';
import { testsWhileOpen } from '../advice/testsWhileOpen.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import type { Circumstances } from './circumstances.ts';

const compiled = compileModel(parseModel(pumpModel()));
const facts = { context: {}, observations: [] };
const belief = beliefOf(compiled, facts);
const access = compiled.model.access[0]!.id;

/** Everything that asks for circumstances. */
const questions: Readonly<Record<string, (circumstances: Circumstances) => unknown>> = {
  advise: (circumstances) => advise(compiled, belief, circumstances),
  repairOrTest: (circumstances) => repairOrTest(compiled, belief, circumstances),
  compileCaseProblem: (circumstances) => compileCaseProblem(compiled, belief, circumstances),
  whatWouldItTake: (circumstances) => whatWouldItTake(compiled, belief, circumstances, { kind: 'access', access }),
  testsWhileOpen: (circumstances) => testsWhileOpen(compiled, belief, circumstances, access),
  adviceStability: (circumstances) => adviceStability(compiled, facts, circumstances, { draws: 1 }),
};
const prices = (change: object) => ({ prices: { currency: 'EUR', labourPerHour: 60, partsFactor: 1, ...change } });

describe.each(Object.entries(questions))('%s refuses', (_, ask) => {
  test.each([
    ['labour that is no number', prices({ labourPerHour: NaN }), '/prices/labourPerHour'], // never returned
    ['labour that is missing', prices({ labourPerHour: undefined }), '/prices/labourPerHour'], // never returned
    ['a parts factor that is no number', prices({ partsFactor: NaN }), '/prices/partsFactor'], // never returned
    ['negative labour', prices({ labourPerHour: -1 }), '/prices/labourPerHour'], // was advised to earn money
    ['labour beyond any', prices({ labourPerHour: 1e308 }), '/prices/labourPerHour'], // cost NaN, 'refer'
    ['parts beyond any', prices({ partsFactor: 1e308 }), '/prices/partsFactor'],
    ['parts for nothing', prices({ partsFactor: 0 }), '/prices/partsFactor'],
    ['a needless opening that earns something', prices({ needlessOpening: -1 }), '/prices/needlessOpening'],
    ['a needless opening that is no number', prices({ needlessOpening: NaN }), '/prices/needlessOpening'],
    ['a price as text', prices({ labourPerHour: '60' }), '/prices/labourPerHour'],
    ['no currency', prices({ currency: '' }), '/prices/currency'],
    ['equipment that nobody knows', { equipment: ['gague'] }, '/equipment/0'], // as if it were not there
    ['an access that nobody knows', { openAccess: [access, 'lid'] }, '/openAccess/1'],
    ['access that is no list', { openAccess: 3 }, '/openAccess'],
    ['nothing at all', null, ''],
  ])('%s', (__, circumstances, path) => {
    const refused = thrown(() => ask(circumstances as unknown as Circumstances));
    expect(refused).toBeInstanceOf(EvidenceError);
    expect(refused.problems.map((problem) => problem.path)).toContain(path);
  });

  test('everything that is wrong at once', () => {
    const { problems } = thrown(() => ask({ equipment: ['a', 'b'], openAccess: ['c'] }));
    expect(problems.map(({ path }) => path)).toEqual(['/equipment/0', '/equipment/1', '/openAccess/0']);
  });
});

describe('a belief from elsewhere', () => {
  const other = parseModel(pumpModel());
  const renamed = compileModel({
    ...other,
    tests: other.tests.map((one, at) => (at > 0 ? one : { ...one, id: 'other' })),
  });
  const questionsOf: Readonly<Record<string, (of: Belief) => unknown>> = {
    advise: (of) => advise(compiled, of),
    compileCaseProblem: (of) => compileCaseProblem(compiled, of),
    repairOrTest: (of) => repairOrTest(compiled, of),
  };

  test.each(Object.entries(questionsOf))('%s refuses one of another model', (_, ask) => {
    // was used: tests it did not know were left out, down to 'refer'
    expect(thrown(() => ask(beliefOf(renamed, facts)))).toMatchObject({ code: 'belief-of-another-model' });
  });

  test.each(Object.entries(questionsOf))('%s refuses one that is no number', (_, ask) => {
    const ranking = belief.ranking.map((ranked) => ({ ...ranked, probability: NaN }));
    expect(thrown(() => ask({ ...belief, ranking }))).toMatchObject({ path: '/belief/ranking/0/probability' });
    expect(thrown(() => ask({} as Belief)).problems.map(({ path }) => path)).toContain('/belief/ranking');
    expect(thrown(() => ask(null as unknown as Belief))).toBeInstanceOf(EvidenceError);
  });

  test('a copy of one is as good as itself', () => {
    const copy = structuredClone(belief);
    expect(advise(compiled, copy)).toEqual(advise(compiled, belief));
    expect(repairOrTest(compiled, copy)).toEqual(repairOrTest(compiled, belief));
  });
});

test('one result entered twice under one id is refused, not counted twice', () => {
  const [one] = compiled.testList;
  const seen = { kind: 'result', id: 'a', test: one!.test.id, outcome: one!.outcomes[0]! } as const;
  expect(thrown(() => beliefOf(compiled, { context: {}, observations: [seen, seen] }))).toMatchObject({
    code: 'id-taken',
    path: '/observations/1/id',
  });
});

test('prices of a question about the whole model are looked at too', () => {
  expect(thrown(() => diagnosability(compiled, prices({ labourPerHour: NaN })))).toMatchObject({
    path: '/prices/labourPerHour',
  });
});

function thrown(act: () => unknown): FaultoddsError {
  try {
    act();
  } catch (error) {
    if (error instanceof FaultoddsError) return error;
    throw error;
  }
  throw new TypeError('nothing was refused');
}
