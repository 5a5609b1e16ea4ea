import { expect, test } from 'vitest';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
import { GRID, ODDS, interpolate } from './oddsGrid.ts';
import { makePairBound } from './makePairBound.ts';
import { pairBudgets } from './pairBudgets.ts';
import { compilePairGame } from './pairGame.ts';
import { makePerfectInformation, costOfKnowing } from './makePerfectInformation.ts';
import { repairSlack } from './repairSlack.ts';
import { twoCauses } from '../../../../tests/fixtures/twoCauses.ts';

// Two causes, a perfect test, repairs that always cure: nothing is lost by pairs, openings or repeats, so the bound must be the optimum.
test.each([0.02, 0.1, 0.35, 0.5, 0.8, 0.97])('meets the optimum for two causes and a perfect test, at %f', (share) => {
  const problem = twoCauses(share);
  const optimum = exactDynamicProgramming.solve(problem).progress.upperBound;
  // by hand: what the right repair costs, and the cheapest of the test, the first repair in vain, the second in vain
  const byHand = share * 100 + (1 - share) * 70 + Math.min(20, 100 * (1 - share), 70 * share);
  expect(optimum).toBeCloseTo(byHand, 9);
  expect(makePairBound(problem)(problem.start)).toBeLessThanOrEqual(byHand + 1e-9);
  expect(makePairBound(problem)(problem.start)).toBeGreaterThan(byHand - 0.02 * byHand);
});

// Smith 1956, Naval Research Logistics Quarterly 3:59-66: looking for one of several by tests that single out one each, in the order of
// probability over cost, costs at least the sum over pairs of min(p_i t_j, p_j t_i).
test('charges for every pair when each test singles out one cause only', () => {
  const prior = [0.4, 0.3, 0.2, 0.1];
  const costs = [12, 8, 10, 9];
  const problem = compileTableProblem({
    prior,
    tests: costs.map((cost, at) => ({
      id: `single-out-${at}`,
      cost,
      outcomeGivenCause: prior.map((_, cause) => (cause === at ? [1, 0] : [0, 1])),
    })),
    repairs: prior.map((_, at) => ({ id: `repair-${at}`, cost: 500, cures: prior.map((_p, c) => Number(c === at)) })),
    referralCost: prior.map(() => 5000),
  });
  let pairs = 0;
  for (let i = 0; i < 4; i += 1) {
    for (let j = i + 1; j < 4; j += 1) pairs += Math.min(prior[i]! * costs[j]!, prior[j]! * costs[i]!);
  }
  const extra = makePairBound(problem)(problem.start) - 500;
  const optimum = exactDynamicProgramming.solve(problem).progress.upperBound - 500;
  expect(extra).toBeLessThanOrEqual(optimum + 1e-9);
  expect(extra).toBeGreaterThan(0.85 * pairs);
});

test('values are concave in the odds and fall to nothing where one of the two is certain', () => {
  const game = compilePairGame(twoCauses(0.3));
  const { values } = pairBudgets(game);
  for (let g = 1; g < GRID - 1; g += 1) {
    const [before, here, after] = [values[g - 1]!, values[g]!, values[g + 1]!];
    const along = (ODDS[g]! - ODDS[g - 1]!) / (ODDS[g + 1]! - ODDS[g - 1]!);
    expect(here).toBeGreaterThanOrEqual((1 - along) * before + along * after - 1e-9 * here);
  }
  // per unit of the rare one: its share of the other's repair in vain, and no more
  expect(interpolate(values, 0, 1e-9, 1, Math.log(1e-9))).toBeLessThan(71e-9);
  expect(interpolate(values, 0, 1, 1e-9, Math.log(1e9))).toBeLessThan(101e-9);
});

test('a repair in vain costs also the access it closes again, when the right one would have profited from it', () => {
  const problem = compileTableProblem({
    prior: [0.6, 0.4],
    access: [{ cost: 40 }],
    tests: [
      {
        id: 'look',
        cost: 5,
        access: 0,
        outcomeGivenCause: [
          [0.9, 0.1],
          [0.2, 0.8],
        ],
      },
    ],
    repairs: [
      { id: 'first', cost: 100, access: 0, cures: [1, 0] },
      { id: 'second', cost: 70, access: 0, cures: [0, 1] },
    ],
    referralCost: [400, 400],
  });
  const slack = repairSlack(problem);
  // open: 100 for the repair and 40 to open again; closed: 140 for the repair, nothing more
  expect([...slack[0]!.fresh]).toEqual([0, 140]);
  expect([...slack[1]!.fresh]).toEqual([110, 0]);
});

test('is perfect information where one cause is left', () => {
  const problem = twoCauses(1);
  const knowing = makePerfectInformation(problem)(0, []);
  expect(makePairBound(problem)(problem.start)).toBeCloseTo(costOfKnowing(knowing, problem.start), 6);
});
