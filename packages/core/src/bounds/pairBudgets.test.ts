import { twoCauses } from '../../../../tests/fixtures/twoCauses.ts';
import { describe, expect, test } from 'vitest';
import { countTurns } from '../../../../tests/fixtures/countTurns.ts';
import { createRandom } from '../distributions/random.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { costOfKnowing, makePerfectInformation } from './makePerfectInformation.ts';
import { GRID, interpolate, ODDS } from './oddsGrid.ts';
import { pairBudgets, pairBudgetsInTurns, type PairBudgets } from './pairBudgets.ts';
import { compilePairGameInTurns, compilePairGame, PAIRS_PER_TURN, type PairGame } from './pairGame.ts';
import { PAIR_STATES, REMEMBERED } from './pairStates.ts';

const random = createRandom(11);
const causes = Array.from({ length: 36 }, (_, at) => at);
const problem = compileTableProblem({
  prior: causes.map(() => 1 / 36),
  tests: Array.from({ length: 8 }, (_, at) => ({
    id: `t${at}`,
    cost: 2 + at,
    outcomeGivenCause: causes.map(() => {
      const p = 0.05 + 0.9 * random();
      return [p, 1 - p];
    }),
  })),
  repairs: causes.map((at) => ({ id: `r${at}`, cost: 50 + at, cures: causes.map((cause) => Number(cause === at)) })),
  referralCost: causes.map(() => 2000),
});

test('between two occasions to stop lie at most as many pairs as it says', () => {
  const game = compilePairGame(problem);
  const pairs = game.first.length;
  expect(pairs).toBeGreaterThan(PAIRS_PER_TURN);
  const rounds = 2;
  const { answer, turns } = countTurns(pairBudgetsInTurns(game, rounds));
  // every round solves all pairs, all but the last follow them, at the end all are certified and asked what they owe
  expect(turns).toBeGreaterThanOrEqual(Math.floor(((2 * rounds + 1) * pairs) / PAIRS_PER_TURN));
  expect(answer).toEqual(pairBudgets(game, rounds));
  // one cause a turn against all others, then the pairs chosen
  expect(countTurns(compilePairGameInTurns(problem)).turns).toBeGreaterThanOrEqual(
    causes.length + Math.floor(pairs / PAIRS_PER_TURN),
  );
});

/** What all pairs are worth at the start less what is paid back, from the tables alone. */
function worthOf({ weight, first, second }: PairGame, { values, testSurcharge }: PairBudgets): number {
  let sum = 0;
  first.forEach((a, p) => {
    const b = second[p]!;
    sum += interpolate(values, p * PAIR_STATES * GRID, weight[a]!, weight[b]!, Math.log(weight[a]! / weight[b]!));
  });
  for (const row of testSurcharge) row.forEach((money, h) => (sum -= money * weight[h]!));
  return sum;
}

describe('two causes and a test that is sure', () => {
  const sure = (share: number) => compilePairGame(twoCauses(share));

  // the test, the first repair in vain where it is the second, the second in vain where it is the first
  test.each([
    [0.1, 70 * 0.1],
    [0.35, 20],
    [0.9, 100 * 0.1],
  ])('one pair is worth the cheapest end of its confusion: at %f that is %f', (share, cheapest) => {
    const { worth } = pairBudgets(sure(share));
    expect(worth).toBeLessThanOrEqual(cheapest + 1e-9);
    expect(worth).toBeGreaterThan(0.98 * cheapest);
  });

  test('a pair has all the money there is: per unit of the second its value is min(20 (odds + 1), 70 odds, 100)', () => {
    // at once and after many rounds
    for (const rounds of [1, 20]) {
      const { values } = pairBudgets(sure(0.5), rounds);
      ODDS.forEach((odds, g) => {
        const cheapest = Math.min(20 * (odds + 1), 70 * odds, 100);
        expect(values[g]).toBeLessThanOrEqual(cheapest + 1e-9);
        expect(values[g]).toBeGreaterThan(0.98 * cheapest);
      });
    }
  });
});

describe('four causes', () => {
  const prior = [0.4, 0.3, 0.2, 0.1];
  const four = compileTableProblem({
    prior,
    access: [{ cost: 6 }],
    tests: [
      [0.9, 0.7, 0.2, 0.4],
      [0.1, 0.8, 0.3, 0.6],
      [0.5, 0.2, 0.9, 0.3],
    ].map((yes, at) => ({
      id: `t${at}`,
      cost: 8 + 3 * at,
      ...(at < 2 ? { access: 0 } : {}),
      outcomeGivenCause: yes.map((p) => [p, 1 - p]),
    })),
    repairs: prior.map((_, at) => ({
      id: `r${at}`,
      cost: 60 + 10 * at,
      cures: prior.map((_p, cause) => (cause === at ? 0.95 : 0)),
    })),
    referralCost: prior.map(() => 500),
  });
  const game = compilePairGame(four);
  const budgets = pairBudgets(game);

  test('a pair’s value is never negative, and concave in the weights: in the odds its chords fall', () => {
    const { values } = budgets;
    const states = values.length / GRID;
    for (let state = 0; state < states; state += 1) {
      let before = Infinity;
      for (let g = 0; g < GRID; g += 1) {
        const value = values[state * GRID + g]!;
        expect(value).toBeGreaterThanOrEqual(0);
        if (g === 0) continue;
        const slope = (value - values[state * GRID + g - 1]!) / (ODDS[g]! - ODDS[g - 1]!);
        expect(slope).toBeLessThanOrEqual(before + 1e-9 * Math.abs(before));
        before = slope;
      }
    }
  });

  test('all pairs together are worth what the tables say, and no more than the optimum costs beyond knowing', () => {
    expect(budgets.worth).toBeCloseTo(worthOf(game, budgets), 10);
    const optimum = exactDynamicProgramming.solve(four).progress.upperBound;
    const knowing = costOfKnowing(makePerfectInformation(four)(0, []), four.start);
    expect(budgets.worth).toBeLessThanOrEqual(optimum - knowing);
    expect(budgets.worth).toBeGreaterThan(0.5 * (optimum - knowing));
  });

  test('more rounds are worth no less, and the first are worth having', () => {
    const worthAfter = (rounds: number): number => pairBudgets(game, rounds).worth;
    const [one, four_, many] = [worthAfter(1), worthAfter(4), worthAfter(40)];
    expect(four_).toBeGreaterThan(1.02 * one);
    expect(many).toBeGreaterThan(four_);
    // few pairs leave time for sixty-four
    expect(budgets.worth).toBe(worthAfter(64));
  });

  test('the parts of an access are one whole for every configuration; nothing is paid back below nothing', () => {
    for (const parts of budgets.accessPart) {
      expect(parts).toHaveLength(2); // the two tests behind it; no repair is
      prior.forEach((_, h) => expect(parts.reduce((sum, part) => sum + part[h]!, 0)).toBeCloseTo(1, 12));
      for (const part of parts) for (const share of part) expect(share).toBeGreaterThan(0);
    }
    expect(budgets.testSurcharge).toHaveLength(3);
    for (const row of budgets.testSurcharge) for (const money of row) expect(money).toBeGreaterThanOrEqual(0);
  });

  test('money goes where it is worth most: a test that is wanted more is paid back, an access is not shared evenly', () => {
    expect(budgets.testSurcharge.flatMap((row) => [...row]).some((money) => money > 0)).toBe(true);
    expect(budgets.accessPart.flat().some((part) => part.some((share) => Math.abs(share - 0.5) > 0.05))).toBe(true);
  });

  test('tests are remembered from the fifth round on', () => {
    const remembersAfter = (rounds: number): boolean => pairBudgets(game, rounds).remembered.some((at) => at >= 0);
    expect([1, 4, 5, 6].map(remembersAfter)).toEqual([false, false, true, true]);
  });

  test('a pair remembers different tests by position, or none', () => {
    game.first.forEach((_, p) => {
      const own = [...budgets.remembered.subarray(p * REMEMBERED, (p + 1) * REMEMBERED)].filter((at) => at >= 0);
      expect(new Set(own).size).toBe(own.length);
      for (const at of own) expect(at).toBeLessThan(3);
    });
    // six pairs: as many as there is room for
    expect(budgets.remembered.filter((at) => at >= 0).length).toBeGreaterThan(6);
  });
});

test('a test that is weak for every pair has no money, and the others keep theirs', () => {
  const [first, second] = [0.4, 0.42];
  const weak = compilePairGame(
    compileTableProblem({
      prior: [0.5, 0.5],
      tests: [
        {
          id: 'weak',
          cost: 5,
          outcomeGivenCause: [
            [first, 1 - first],
            [second, 1 - second],
          ],
        },
      ],
      repairs: [
        { id: 'first', cost: 100, cures: [1, 0] },
        { id: 'second', cost: 70, cures: [0, 1] },
      ],
      referralCost: [400, 400],
    }),
  );
  // the second repair in vain in half of the cases, but for what the weak test is worth
  const { worth } = pairBudgets(weak);
  expect(worth).toBeLessThanOrEqual(35 + 1e-9);
  expect(worth).toBeGreaterThan(30);
});

test('beside a weak test the others’ money is still divided better from round to round', () => {
  const prior = [0.5, 0.3, 0.2];
  const game = compilePairGame(
    compileTableProblem({
      prior,
      tests: [
        [0.9, 0.4, 0.1],
        [0.5, 0.51, 0.52],
      ].map((yes, at) => ({ id: `t${at}`, cost: 8 - 3 * at, outcomeGivenCause: yes.map((p) => [p, 1 - p]) })),
      repairs: prior.map((_, at) => ({
        id: `r${at}`,
        cost: 60 + 10 * at,
        cures: prior.map((_p, cause) => Number(cause === at)),
      })),
      referralCost: prior.map(() => 500),
    }),
  );
  // tests are remembered in both
  expect(pairBudgets(game, 40).worth).toBeGreaterThan(pairBudgets(game, 6).worth + 0.001);
});

test('of many pairs those worth next to nothing lose all they have, the others keep the worth', () => {
  const game = compilePairGame(problem);
  const budgets = pairBudgets(game, 5);
  const size = PAIR_STATES * GRID;
  const isDropped = [...game.first.keys()].map((p) =>
    budgets.values.subarray(p * size, p * size + GRID).every((v) => v === 0),
  );
  const dropped = isDropped.filter((is) => is).length;
  expect(dropped).toBeGreaterThan(0);
  expect(dropped).toBeLessThan(0.5 * isDropped.length);
  expect(budgets.worth).toBeCloseTo(worthOf(game, budgets), 9);
  // before any is dropped, after three rounds
  expect(budgets.worth).toBeGreaterThan(0.97 * pairBudgets(game, 3).worth);
});
