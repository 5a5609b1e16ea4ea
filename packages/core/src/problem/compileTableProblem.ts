import type { Action } from './action.ts';
import { checkTables } from './checkTables.ts';
import type { DecisionProblem } from './decisionProblem.ts';
import { makeEvidenceAdder, noEvidence } from './evidenceAfter.ts';
import type { ProblemTables } from './problemTables.ts';
import { startState } from './startState.ts';

/** A small decision problem from explicit tables; minutes cost nothing, money is the only cost. Accesses of tables have
 * no name: they are in the price of a step, and its lists of what it opens and closes stay empty, as do its cautions.
 * @throws ModelError numbers that are no probabilities or costs, rows that do not sum to one, lists of another length
 * @example
 * ```ts
 * const twoRepairs = compileTableProblem({
 *   prior: [0.6, 0.4],
 *   tests: [],
 *   repairs: [
 *     { id: 'first', cost: 100, cures: [1, 0] },
 *     { id: 'second', cost: 70, cures: [0, 1] },
 *   ],
 *   referralCost: [400, 400],
 * });
 * repairOrder.solve(twoRepairs).progress.upperBound // 128, which is 100 + 0.4 * 70
 * ``` */
export function compileTableProblem(tables: ProblemTables): DecisionProblem {
  checkTables(tables);
  const { prior, access = [], tests, repairs } = tables;
  const closure = (at: number): number =>
    (access[at]!.requires ?? []).reduce((bits, required) => bits | closure(required), 1 << at);
  const bitsOf = (at: number | undefined): number => (at === undefined ? 0 : closure(at));
  const opening = (bits: number): number =>
    access.reduce((sum, { cost }, at) => ((bits & (1 << at)) === 0 ? sum : sum + cost), 0);

  const standingOn = (bits: number): number =>
    access.reduce((all, _, at) => ((closure(at) & bits) === 0 ? all : all | (1 << at)), 0);
  const bitsAmong = (ids: readonly number[]): number => ids.reduce((bits, at) => bits | (1 << at), 0);
  const testAccess = tests.map((test) => bitsOf(test.access));
  const repairAccess = repairs.map((repair) => bitsOf(repair.access));
  const opens = access.reduce((bits, one, at) => (one.opensEngine === true ? bits | (1 << at) : bits), 0);
  const neededBy = Int32Array.from(prior, (_, cause) =>
    repairs.reduce((bits, { cures }, at) => (cures[cause]! > 0 ? bits | (repairAccess[at]! & opens) : bits), 0),
  );
  const costFrom = (repair: number, open: number): number =>
    repairs[repair]!.cost + opening(repairAccess[repair]! & ~open);
  const outcomeTables = tests.map((test) => Float64Array.from(test.outcomeGivenCause.flat()));
  const referralCost = Float64Array.from(tables.referralCost);
  const { currency = 'unit' } = tables;
  const fee = referralCost.reduce((a, b) => Math.min(a, b), Infinity);
  const testCost = (test: number, open: number): number => tests[test]!.cost + opening(testAccess[test]! & ~open);
  const priceOfAction = (action: Action, open: number): number => {
    if (action.kind === 'refer') return fee;
    return action.kind === 'test' ? testCost(action.test, open) : costFrom(action.repair, open);
  };

  return {
    currency,
    causes: prior.map((_, at) => `cause-${at + 1}`),
    tests: tests.map(({ id, outcomeGivenCause, answers = [], follows = [], asleep }) => ({
      id,
      outcomes: (outcomeGivenCause[0] ?? []).map((_, o) => `outcome-${o + 1}`),
      answers,
      follows,
      ...(asleep === undefined
        ? {}
        : { asleep: { chance: Float64Array.from(asleep.chance), again: { money: asleep.again, minutes: 0 } } }),
    })),
    repairs: repairs.map(({ id, answers = [] }) => ({ id, answers })),
    referral: { id: 'refer', fee },
    repairFacts: {
      cures: repairs.map(({ cures }) => cures.flatMap((success, cause) => (success > 0 ? [{ cause, success }] : []))),
      candidates: repairs.map((_, at) => at),
      costFrom,
      access: repairAccess,
      needless: { opens, amount: tables.needlessOpening ?? 0, neededBy },
      referralCost,
    },
    repairCost: (repair, open) => ({ money: costFrom(repair, open), minutes: 0 }),
    testCost: (test, open) => ({ money: testCost(test, open), minutes: 0 }),
    stepFacts: (action, open) => ({
      price: { amount: priceOfAction(action, open), currency },
      minutes: 0,
      accessToOpen: [],
      accessToClose: [],
      cautions: [],
    }),
    accessCost: Float64Array.from(access, ({ cost }) => cost),
    testAccess,
    closedForTest: tests.map(({ closes = [], impossibleWith = [] }, test) => ({
      closes: standingOn(bitsAmong(closes)),
      impossibleWith: bitsAmong(impossibleWith) & ~testAccess[test]!,
    })),
    repairAccess,
    evidenceAfter: makeEvidenceAdder(),
    outcomeTable: (_, test) => outcomeTables[test]!,
    configurations: () => ({
      cause: Int32Array.from(prior, (_, cause) => cause),
      weight: Float64Array.from(prior),
      outcomeGiven: (test) => outcomeTables[test]!,
    }),
    limits: tables.limits ?? {},
    start: startState({
      evidence: noEvidence(),
      posterior: Float64Array.from(prior),
      open: (tables.open ?? []).reduce((bits, at) => bits | closure(at), 0),
      tests: tests.length,
    }),
  };
}
