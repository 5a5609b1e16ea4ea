import { expect, test } from 'vitest';
import { countTurns } from '../../../../tests/fixtures/countTurns.ts';
import { createRandom } from '../distributions/random.ts';
import { compileTableProblem } from '../problem/compileTableProblem.ts';
import { pairBudgets, pairBudgetsInTurns } from './pairBudgets.ts';
import { compilePairGameInTurns, compilePairGame, PAIRS_PER_TURN } from './pairGame.ts';

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
