import { describe, expect, test } from 'vitest';
import { createRandom } from '../distributions/random.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import type { ProblemTables } from '../problem/problemTables.ts';
import { SPACING } from './oddsGrid.ts';
import { compilePairGame, EFFECT, type PairGame } from './pairGame.ts';

const two = (more: Partial<ProblemTables> = {}): DecisionProblem =>
  compileTableProblem({
    prior: [0.6, 0.4],
    tests: [
      {
        id: 'tell',
        cost: 20,
        outcomeGivenCause: [
          [0.8, 0.2],
          [0.3, 0.7],
        ],
      },
    ],
    repairs: [
      { id: 'first', cost: 100, cures: [0.9, 0] },
      { id: 'second', cost: 70, cures: [0, 1] },
    ],
    referralCost: [400, 400],
    ...more,
  });
const numbers = (list: ArrayLike<number>): number[] => Array.from(list);
const pairsOf = ({ first, second }: PairGame): number[][] => numbers(first).map((a, p) => [a, second[p]!]);

describe('two causes, 0.6 and 0.4, a test, a repair for each, the referral', () => {
  const game = compilePairGame(two());

  test('are one pair of four actions, the test first, then the repairs, then the referral', () => {
    expect(pairsOf(game)).toEqual([[0, 1]]);
    expect(numbers(game.weight)).toEqual([0.6, 0.4]);
    expect(numbers(game.actionsOf)).toEqual([0, 4]);
    expect(numbers(game.effect)).toEqual([EFFECT.test, EFFECT.triesFirst, EFFECT.triesSecond, EFFECT.ends]);
    expect(game.tests).toEqual([{ test: 0, cost: 20 }]);
  });

  test('an action takes from the pools of both members: its row times two, and one', () => {
    expect(numbers(game.pools)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  test('a repair is chosen before it was tried, and after the other one where that leaves it anything to do', () => {
    // phases: nothing tried, the first tried, the second tried. The only repair of a cause cannot come after itself
    expect(numbers(game.phases)).toEqual([0b111, 0b101, 0b011, 0b111]);
  });

  test('a budget is what an action costs beyond what is paid where the cause is known', () => {
    // known: 100, and 400 for the tenth it leaves: 140; 70 for the second
    expect(numbers(game.budget)).toEqual([
      20,
      20,
      // in place it costs nothing more; for the other cause all of its price
      0,
      100,
      70,
      0,
      400 - 140,
      400 - 70,
    ]);
  });

  test('after a repair of the same cause failed the referral has nothing left to give, and the repair itself cannot come', () => {
    expect(numbers(game.budgetAfter)).toEqual([20, 20, 0, 100, 70, 0, 0, 0]);
  });

  test('a result moves the odds by the quotient of its chances, on average over the two points beside', () => {
    expect(numbers(game.resultsOf)).toEqual([0, 2, 3, 3, 3]);
    // ln(0.8 / 0.3) = 0.98 and ln(0.2 / 0.7) = -1.25, in steps of 0.75; ln 0.1 = -2.30
    expect(SPACING).toBe(0.75);
    expect(numbers(game.shift)).toEqual([1, -2, -4]);
    // weights add up to the chance for the second, and in the odds to that for the first
    const chances = [
      [0.8, 0.3],
      [0.2, 0.7],
      [0.1, 1], // the first repair failed: a tenth of the first, all of the second
    ] as const;
    chances.forEach(([forFirst, forSecond], k) => {
      const [low, up] = [game.lower[k]!, game.upper[k]!];
      expect(low).toBeGreaterThan(0);
      expect(up).toBeGreaterThan(0);
      expect(low + up).toBeCloseTo(forSecond, 14);
      const at = game.shift[k]!;
      expect(low * Math.exp(0.75 * at) + up * Math.exp(0.75 * (at + 1))).toBeCloseTo(forFirst, 14);
    });
  });

  test('a repair that surely cures, and failed, leaves nothing of its cause: no result', () => {
    // the second repair: from 3 to 3
    expect(game.resultsOf[2]).toBe(game.resultsOf[3]);
  });
});

test('a repair that may fail for the second member moves the odds towards the first', () => {
  const game = compilePairGame(two({ repairs: [{ id: 'second', cost: 70, cures: [0, 0.75] }] }));
  expect(numbers(game.effect)).toEqual([EFFECT.test, EFFECT.triesSecond, EFFECT.ends]);
  // a quarter of the second is left, all of the first: ln 4 = 1.386, and per unit of the second a quarter
  const at = game.resultsOf[1]!;
  expect(game.shift[at]).toBe(1);
  expect(game.lower[at]! + game.upper[at]!).toBeCloseTo(0.25, 14);
  expect(game.lower[at]! * Math.exp(0.75) + game.upper[at]! * Math.exp(1.5)).toBeCloseTo(1, 14);
  expect(game.resultsOf[2]! - at).toBe(1);
});

test('a repair that may cure both ends the confusion, one that cures neither is no action of the pair', () => {
  const game = compilePairGame(
    two({
      prior: [0.4, 0.4, 0.2],
      tests: [],
      repairs: [
        { id: 'both', cost: 10, cures: [0.5, 0.5, 0] },
        { id: 'third', cost: 10, cures: [0, 0, 1] },
      ],
      referralCost: [400, 400, 400],
    }),
  );
  expect(pairsOf(game)).toEqual([
    [0, 1],
    [0, 2],
    [1, 2],
  ]);
  expect(numbers(game.actionsOf)).toEqual([0, 2, 5, 8]);
  expect(numbers(game.effect)).toEqual([
    EFFECT.ends,
    EFFECT.ends,
    EFFECT.triesFirst,
    EFFECT.triesSecond,
    EFFECT.ends,
    EFFECT.triesFirst,
    EFFECT.triesSecond,
    EFFECT.ends,
  ]);
  // pools: row * 3 + the cause
  expect(numbers(game.pools.subarray(0, 4))).toEqual([0, 1, 6, 7]);
  expect(numbers(game.pools.subarray(4, 10))).toEqual([0, 2, 3, 5, 6, 8]);
  // the referral of one that no other repair is left for
  expect(numbers(game.resultsOf.subarray(0, 3))).toEqual([0, 0, 0]);
});

describe('a test', () => {
  const telling = (first: number, second: number) =>
    compilePairGame(
      two({
        tests: [
          {
            id: 'tell',
            cost: 20,
            outcomeGivenCause: [
              [first, 1 - first],
              [second, 1 - second],
            ],
          },
        ],
      }),
    );

  test('that says the same of both is no action of the pair', () => {
    expect(numbers(telling(0.4, 0.4).effect)).toEqual([EFFECT.triesFirst, EFFECT.triesSecond, EFFECT.ends]);
  });

  test('that hardly tells them apart, by less than 0.03, has no share and no phase', () => {
    expect(telling(0.4, 0.42).effect[0]).toBe(EFFECT.weakTest);
    expect(telling(0.4, 0.42).phases[0]).toBe(0);
    expect(telling(0.4, 0.44).effect[0]).toBe(EFFECT.test);
    expect(telling(0.44, 0.4).effect[0]).toBe(EFFECT.test);
  });

  test('has no result where one of them would be ruled out', () => {
    expect(numbers(telling(1, 0.5).resultsOf.subarray(0, 2))).toEqual([0, 1]);
    expect(numbers(telling(0.5, 0).resultsOf.subarray(0, 2))).toEqual([0, 1]);
    // nor where the odds are moved by e^12 and more: sixteen points
    expect(numbers(telling(0.5, 0.5e-6).resultsOf.subarray(0, 2))).toEqual([0, 1]);
    expect(numbers(telling(0.5, 0.5e-5).resultsOf.subarray(0, 2))).toEqual([0, 2]);
    expect(numbers(telling(0.5e-5, 0.5).resultsOf.subarray(0, 2))).toEqual([0, 2]);
    expect(numbers(telling(0.5e-6, 0.5).resultsOf.subarray(0, 2))).toEqual([0, 1]);
  });

  test('that was done is not asked for; a repair that failed neither', () => {
    const problem = two();
    const asked = (closed: number, tried: readonly number[]) =>
      compilePairGame({ ...problem, start: { ...problem.start, closedTests: Uint8Array.of(closed), tried } });
    expect(asked(1, []).tests).toEqual([]);
    expect(numbers(asked(1, []).effect)).toEqual([EFFECT.triesFirst, EFFECT.triesSecond, EFFECT.ends]);
    const failed = asked(0, [0]);
    expect(numbers(failed.effect)).toEqual([EFFECT.test, EFFECT.triesSecond, EFFECT.ends]);
    // the first cause has the referral alone: 400 where it is known
    expect(numbers(failed.budget)).toEqual([20, 20, 70, 0, 0, 330]);
  });
});

test('configurations of one cause are no pair; one that is ruled out keeps the least weight', () => {
  const problem = two();
  const rows = Float64Array.of(0.8, 0.2, 0.5, 0.5, 0.3, 0.7);
  const game = compilePairGame({
    ...problem,
    configurations: () => ({
      cause: Int32Array.of(0, 0, 1),
      weight: Float64Array.of(0.5, 0.1, 0),
      outcomeGiven: () => rows,
    }),
  });
  expect(pairsOf(game)).toEqual([
    [0, 2],
    [1, 2],
  ]);
  expect(numbers(game.weight)).toEqual([0.5, 0.1, 1e-12]);
  // budgets are those of the cause
  expect(numbers(game.budget.subarray(3, 9))).toEqual([0, 0, 100, 70, 70, 0]);
});

test('an access that is closed is shared by the tests behind it, each for itself, and the repairs together', () => {
  const behind = (open: readonly number[]) =>
    compilePairGame(
      two({
        access: [{ cost: 15 }],
        open,
        tests: [
          {
            id: 'tell',
            cost: 20,
            access: 0,
            outcomeGivenCause: [
              [0.8, 0.2],
              [0.3, 0.7],
            ],
          },
        ],
        repairs: [
          { id: 'first', cost: 100, cures: [0.9, 0] },
          { id: 'second', cost: 70, access: 0, cures: [0, 1] },
        ],
      }),
    );
  // rows: the test 0, the repairs 1 and 2. The second cause's repair profits from the opening
  expect(behind([]).access).toEqual([{ bit: 0, cost: 15, behind: [[0], [2]], isFree: Uint8Array.of(1, 0) }]);
  // the price of the test is that with everything open
  expect(numbers(behind([]).budget.subarray(0, 2))).toEqual([20, 20]);
  expect(behind([0]).access).toEqual([]);
});

test('every configuration has the eight partners it is dearest to tell from, weighed by their probability', () => {
  const random = createRandom(3);
  const count = 14;
  const at = Array.from({ length: count }, (_, k) => k);
  const raw = at.map(() => 0.2 + random());
  const prior = raw.map((p) => p / raw.reduce((sum, q) => sum + q, 0));
  const tests = [7, 30].map((cost, t) => ({
    id: `t${t}`,
    cost,
    outcomeGivenCause: at.map(() => {
      const p = 0.05 + 0.9 * random();
      return [p, 1 - p];
    }),
  }));
  const game = compilePairGame(
    compileTableProblem({
      prior,
      tests,
      repairs: at.map((k) => ({ id: `r${k}`, cost: 50, cures: at.map((cause) => Number(cause === k)) })),
      referralCost: at.map(() => 2000),
    }),
  );
  // a test costs its price over the share of the chances that do not overlap: 1 - sum of sqrt(p q)
  const dearness = (a: number, b: number): number =>
    Math.min(
      ...tests.map(({ cost, outcomeGivenCause: rows }) => {
        const overlap = [0, 1].reduce((sum, o) => sum + Math.sqrt(rows[a]![o]! * rows[b]![o]!), 0);
        return cost / (1 - overlap + 1e-6);
      }),
    );
  const expected = new Set<string>();
  for (const a of at) {
    const rank = (b: number): number => dearness(a, b) * Math.sqrt(prior[b]!);
    const partners = at.filter((b) => b !== a).toSorted((b, c) => rank(c) - rank(b));
    for (const b of partners.slice(0, 8)) expected.add(JSON.stringify([Math.min(a, b), Math.max(a, b)]));
  }
  const found = pairsOf(game);
  expect(new Set(found.map((pair) => JSON.stringify(pair)))).toEqual(expected);
  expect(found.length).toBe(expected.size);
  expect(found.length).toBeLessThan((count * (count - 1)) / 2);
  // in order of the first, then of the second
  expect(found).toEqual(found.toSorted(([a, b], [c, d]) => a! - c! || b! - d!));
});

test('without any test all pairs are equally dear', () => {
  expect(pairsOf(compilePairGame(two({ tests: [] })))).toEqual([[0, 1]]);
});
