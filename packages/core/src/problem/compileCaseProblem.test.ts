import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { OptionError } from '../errors/optionError.ts';
import type { Context } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';
import type { Dependence, Model } from '../model/model.ts';
import { parseModel } from '../model/parseModel.ts';
import { compileCaseProblem } from './compileCaseProblem.ts';
import type { Limits } from './decisionProblem.ts';

const pump = pumpModel();
const compiled = compileModel(parseModel(pump));

function problemOf(
  observations: readonly Observation[] = [],
  more: { of?: Model; context?: Context; circumstances?: Circumstances; limits?: Limits } = {},
) {
  const ready = more.of === undefined ? compiled : compileModel(parseModel(more.of));
  const belief = beliefOf(ready, { context: more.context ?? {}, observations });
  return compileCaseProblem(ready, belief, more.circumstances, more.limits);
}
const idsOf = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
const testAt = (problem: ReturnType<typeof problemOf>, id: string): number => idsOf(problem.tests).indexOf(id);
const bitOf = (id: string): number => compiled.accessBit.get(id)!;

describe('the tests of a case', () => {
  test('are those that can be done now, each once: not what is on record, not what needs what is not there', () => {
    expect(idsOf(problemOf().tests)).toEqual(['hum', 'vacuum', 'fuse-look', 'wheel-look']);
    expect(idsOf(problemOf([], { context: { filter: 'fitted' } }).tests)).toContain('filter-look');
    expect(idsOf(problemOf(results(['vacuum', 'weak'])).tests)).toEqual(['hum', 'fuse-look', 'wheel-look']);
    expect(idsOf(problemOf([], { circumstances: { equipment: ['lamp'] } }).tests)).not.toContain('vacuum');
  });

  test('show what the model says given the cause', () => {
    const problem = problemOf();
    const table = problem.outcomeTable(problem.start.evidence, testAt(problem, 'fuse-look'));
    // [cause][whole, blown], the blown fuse first
    const rows = [[0.01, 0.99], ...Array.from({ length: 4 }, () => [0.98, 0.02])].flat();
    rows.forEach((p, k) => expect(table[k]).toBeCloseTo(p, 13));
    expect(table).toHaveLength(rows.length);
    // the drive turns with 0.02, 0.2 and else 0.95: hums with 0.9 then, else with 0.15
    const hums = problem.outcomeTable(problem.start.evidence, testAt(problem, 'hum'));
    [0.02, 0.2, 0.95, 0.95, 0.95].forEach((turning, c) => expect(hums[2 * c]).toBeCloseTo(0.15 + 0.75 * turning, 13));
    expect(problem.tests[0]!.outcomes).toEqual(['hums', 'silent']);
  });

  test('after results they show what they would with these on record, whatever the order of asking', () => {
    const problem = problemOf();
    const [hum, vacuum] = [testAt(problem, 'hum'), testAt(problem, 'vacuum')];
    const silent = problem.evidenceAfter(problem.start.evidence, hum, 1);
    const both = problem.evidenceAfter(silent, vacuum, 1);
    for (const [evidence, onRecord] of [
      [silent, results(['hum', 'silent'])],
      [both, results(['hum', 'silent'], ['vacuum', 'weak'])],
    ] as const) {
      const recorded = problemOf(onRecord);
      for (const { id } of recorded.tests) {
        const found = problem.outcomeTable(evidence, testAt(problem, id));
        const expected = recorded.outcomeTable(recorded.start.evidence, testAt(recorded, id));
        expected.forEach((p, k) => expect(found[k], `${id} ${k}`).toBeCloseTo(p, 12));
        // and is found again
        expect(problem.outcomeTable(evidence, testAt(problem, id))).toBe(found);
      }
    }
  });

  test('a third question after the same results answers for all tests that are left', () => {
    const problem = problemOf();
    const { memo } = problem.evidenceAfter(problem.start.evidence, 0, 1);
    const evidence = problem.evidenceAfter(problem.start.evidence, 0, 1);
    for (const [asked, known] of [
      [1, [1]],
      [2, [1, 2]],
      [3, [1, 2, 3]],
    ] as const) {
      problem.outcomeTable(evidence, asked);
      expect([...memo.tables.keys()].toSorted()).toEqual(known);
    }
    // two are asked for alone; with filter-look in the list the third brings the fourth along
    const five = problemOf([], { context: { filter: 'fitted' } });
    const after = five.evidenceAfter(five.start.evidence, 0, 1);
    for (const asked of [1, 2]) five.outcomeTable(after, asked);
    expect(after.memo.tables.size).toBe(2);
    five.outcomeTable(after, 4);
    expect([...after.memo.tables.keys()].toSorted()).toEqual([1, 2, 3, 4]);
  });

  test('cost their minutes and the access still closed, opened and closed again', () => {
    const problem = problemOf();
    const vacuum = testAt(problem, 'vacuum');
    // a minute costs one: 15, and 6 + 6 for the lid
    expect(problem.testCost(vacuum, 0)).toEqual({ money: 27, minutes: 27 });
    expect(problem.testCost(vacuum, bitOf('lid-off'))).toEqual({ money: 15, minutes: 15 });
    const wheel = testAt(problem, 'wheel-look');
    expect(problem.testCost(wheel, 0).money).toBe(10 + 12 + 24);
    expect(problem.testAccess[wheel]).toBe(bitOf('lid-off') | bitOf('wheel-out'));
    expect(problem.testAccess[testAt(problem, 'hum')]).toBe(bitOf('none'));
    const at = (id: string): number => problem.accessCost[pump.access.findIndex((access) => access.id === id)]!;
    expect([at('none'), at('lid-off'), at('wheel-out'), at('base-up')]).toEqual([0, 12, 24, 8]);
  });

  test('that ask the same question answer each other', () => {
    const pair = { a: 'hum', b: 'vacuum', shared: 'invented', note: 'invented' };
    const answersIn = (kind: Dependence) =>
      Object.fromEntries(
        problemOf([], { of: { ...pump, dependentPairs: [{ ...pair, kind }] } }).tests.map(({ id, answers }) => [
          id,
          answers,
        ]),
      );
    expect(answersIn('same-question')).toEqual({ hum: [1], vacuum: [0], 'fuse-look': [], 'wheel-look': [] });
    // what only shares an error or a fact does not
    expect(answersIn('shared-error')).toEqual({ hum: [], vacuum: [], 'fuse-look': [], 'wheel-look': [] });
  });
});

describe('the repairs of a case', () => {
  test('are all but the referral, with their check', () => {
    const problem = problemOf();
    expect(idsOf(problem.repairs)).toEqual(['fit-fuse', 'change-motor', 'change-hose', 'clear-inlet']);
    // six minutes at least, four for the fuse, ten for the check
    expect(problem.repairCost(0, 0)).toEqual({ money: 6 + 4 + 10, minutes: 16 });
    expect(problem.repairFacts.costFrom(0, 0)).toBe(20);
    // 90 and 120, less 36 minutes of what is open
    expect(problem.repairCost(1, 0)).toEqual({ money: 90 + 120 + 10, minutes: 100 });
    expect(problem.repairCost(1, bitOf('lid-off') | bitOf('wheel-out'))).toEqual({ money: 184, minutes: 64 });
    expect(problem.repairAccess[1]).toBe(bitOf('lid-off') | bitOf('wheel-out'));
    expect(problem.repairFacts.cures[0]).toEqual([{ cause: 0, success: 0.95 }]);
  });

  test('leave out those that failed; the others keep their own cures, costs and access', () => {
    const problem = problemOf([{ kind: 'repair-tried', id: 'x', repair: 'fit-fuse', cured: false }]);
    expect(idsOf(problem.repairs)).toEqual(['change-motor', 'change-hose', 'clear-inlet']);
    expect(problem.repairFacts.candidates).toEqual([0, 1, 2]);
    expect(problem.repairFacts.cures.map((cures) => cures.map(({ cause }) => cause))).toEqual([[1], [2], [3]]);
    expect(problem.repairCost(0, 0).money).toBe(220);
    expect(problem.repairFacts.costFrom(1, 0)).toBe(20 + 25 + 10);
    expect(problem.repairAccess.slice(0, 2)).toEqual([bitOf('lid-off') | bitOf('wheel-out'), 0]);
    expect(problem.stepFacts({ kind: 'repair', repair: 1 }, 0).price.amount).toBe(55);
  });

  test('one that stands for a test answers it, and what asks the same', () => {
    const asking: Model = {
      ...pump,
      repairs: pump.repairs.map((one) =>
        one.id === 'fit-fuse' ? { ...one, sameAs: { test: 'fuse-look', cured: 'blown', notCured: 'whole' } } : one,
      ),
      dependentPairs: [{ a: 'hum', b: 'fuse-look', kind: 'same-question', shared: 'invented', note: 'invented' }],
    };
    expect(problemOf([], { of: asking }).repairs.map(({ answers }) => answers)).toEqual([[2, 0], [], [], []]);
  });

  test('the referral costs its fee, and then the right repair from a closed engine', () => {
    const { referral, repairFacts } = problemOf();
    // 60 minutes and 60; then 20, 220, 55 and 40 + 10; what nobody else cures nothing more
    expect(referral).toEqual({ id: 'send-away', fee: 120 });
    expect([...repairFacts.referralCost]).toEqual([140, 340, 175, 170, 120]);
  });
});

test('the facts of a step are those of its price', () => {
  const problem = problemOf();
  const amountOf = (action: Parameters<typeof problem.stepFacts>[0]): number =>
    problem.stepFacts(action, 0).price.amount;
  expect(amountOf({ kind: 'test', test: 1 })).toBe(27);
  expect(amountOf({ kind: 'repair', repair: 0 })).toBe(20);
  expect(amountOf({ kind: 'refer' })).toBe(120);
  expect(problem.stepFacts({ kind: 'test', test: 2 }, 0).cautions).toContain('mains');
  expect(problem.stepFacts({ kind: 'test', test: 1 }, 0).accessToOpen).toEqual(['lid-off']);
});

describe('the start', () => {
  test('is the belief, with what is open and nothing spent', () => {
    const belief = beliefOf(compiled, { context: {}, observations: results(['hum', 'silent']) });
    const { start, causes } = compileCaseProblem(compiled, belief, { openAccess: ['wheel-out'] });
    expect(causes).toEqual(compiled.causes);
    causes.forEach((cause, c) => expect(start.posterior[c]).toBeCloseTo(belief.posterior[cause]!, 14));
    expect(start.open).toBe(bitOf('lid-off') | bitOf('wheel-out'));
    expect(start).toMatchObject({ tried: [], spent: { money: 0, minutes: 0 }, chance: 1 });
    expect([...start.closedTests]).toEqual([0, 0, 0]);
  });

  test('has the prices of the circumstances, or the model’s', () => {
    expect(problemOf().currency).toBe('unit');
    const prices = { currency: 'EUR', labourPerHour: 120, partsFactor: 2 };
    const dear = problemOf([], { circumstances: { prices } });
    expect(dear.currency).toBe('EUR');
    // twice the labour, twice the part
    expect(dear.repairCost(0, 0).money).toBe(2 * 6 + 2 * 4 + 2 * 10);
  });

  test('keeps its limits, and refuses what are none', () => {
    expect(problemOf([], { limits: { money: 50 } }).limits).toEqual({ money: 50 });
    expect(problemOf().limits).toEqual({});
    expect(() => problemOf([], { limits: { money: NaN } })).toThrow(OptionError);
    expect(() => problemOf([], { circumstances: { openAccess: ['roof'] } })).toThrow(EvidenceError);
  });

  test('configurations are made once and are the belief by cause', () => {
    const problem = problemOf();
    const made = problem.configurations();
    expect(problem.configurations()).toBe(made);
    const sums = new Float64Array(problem.causes.length);
    made.cause.forEach((c, h) => (sums[c]! += made.weight[h]!));
    sums.forEach((sum, c) => expect(sum).toBeLessThanOrEqual(problem.start.posterior[c]! + 1e-12));
    expect(sums.reduce((all, sum) => all + sum, 0)).toBeGreaterThan(0.9);
  });

  test('names the model it was made of', () => {
    expect(problemOf().model!().id).toBe('pump');
  });
});
