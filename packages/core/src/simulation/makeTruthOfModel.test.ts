import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import type { Facts } from '../evidence/facts.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { advise } from '../advice/advise.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import { takeAction } from '../problem/takeAction.ts';
import { createRandom } from '../distributions/random.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { makeAdvicePolicy } from './makeAdvicePolicy.ts';
import { drawTruth } from './drawTruth.ts';
import { makeTruthOfModel } from './makeTruthOfModel.ts';
import { makeTruthOfProblem } from './makeTruthOfProblem.ts';

// Source of the exact shares: the decision problem of the same facts, whose tables are held against `beliefOf` in tests/oracle.
// Tolerance: four and a half standard errors of the drawn shares.
const compiled = compileModel(parseModel(pumpModel()));
const intake: Facts = { context: {}, observations: [] };
const [onRecord] = compiled.testList;
const known: Facts = {
  context: {},
  observations: [{ kind: 'result', id: 'r1', test: onRecord!.test.id, outcome: onRecord!.outcomes[0]! }],
};
const DRAWS = 40_000;

describe('a world made from a model', () => {
  test.each([
    ['at intake', intake, makeTruthOfModel],
    ['with a result on record', known, makeTruthOfModel],
    [
      'drawn outcome by outcome',
      intake,
      (model: typeof compiled, facts: Facts) => makeTruthOfProblem(compileCaseProblem(model, beliefOf(model, facts))),
    ],
  ])('shows cause and two results together as often as the exact belief says, %s', (_, facts, truthOf) => {
    const problem = compileCaseProblem(compiled, beliefOf(compiled, facts));
    const truth = truthOf(compiled, facts);
    const random = createRandom(5);
    for (const [first, second] of [
      [0, 1],
      [1, 2],
    ] as const) {
      const shares = new Map<string, number>();
      for (let at = 0; at < DRAWS; at += 1) {
        const drawn = truth.draw(random);
        const seen = drawn.outcome(first, problem.start.evidence, random());
        const after = problem.evidenceAfter(problem.start.evidence, first, seen);
        const key = `${drawn.cause}/${seen}/${drawn.outcome(second, after, random())}`;
        shares.set(key, (shares.get(key) ?? 0) + 1 / DRAWS);
      }
      let cells = 0;
      for (const one of takeAction(problem, problem.start, { kind: 'test', test: first }).branches) {
        for (const two of takeAction(problem, one.state!, { kind: 'test', test: second }).branches) {
          two.state!.posterior.forEach((p, cause) => {
            const exact = one.probability * two.probability * p;
            const outcomes = two.state!.evidence.results.map(({ outcome }) => outcome);
            const drawn = shares.get(`${cause}/${outcomes.join('/')}`) ?? 0;
            const error = Math.sqrt((exact * (1 - exact)) / DRAWS);
            expect(Math.abs(drawn - exact), `${cause}/${outcomes.join('/')}`).toBeLessThanOrEqual(4.5 * error + 1e-9);
            cells += 1;
          });
        }
      }
      expect(cells).toBeGreaterThan(15);
    }
  });

  test('drawn within the uncertainty of the numbers repeats for its seed and differs from the model', () => {
    const causeShares = (seed: number): readonly number[] => {
      const random = createRandom(3);
      const truth = drawTruth(compiled, intake, {}, createRandom(seed), `seed-${seed}`);
      const count = truth.causes.map(() => 0);
      for (let at = 0; at < 2000; at += 1) count[truth.draw(random).cause]! += 1;
      return count;
    };
    expect(causeShares(1)).toEqual(causeShares(1));
    expect(causeShares(1)).not.toEqual(causeShares(2));
  });
});

describe('advice as a policy', () => {
  const problem = compileCaseProblem(compiled, beliefOf(compiled, intake));
  const decide = makeAdvicePolicy(compiled, intake, {}, problem);

  test('is what is advised with everything recorded on the way', () => {
    const visited = new Set<string>();
    const walk = (state: typeof problem.start, facts: Facts, deep: number): void => {
      const openAccess = compiled.model.access.filter((_, at) => (state.open & (1 << at)) !== 0).map(({ id }) => id);
      const { best } = advise(compiled, beliefOf(compiled, facts), { openAccess });
      const action = decide(state);
      visited.add(action.kind);
      if (action.kind === 'refer') {
        expect(best.kind).toBe('refer');
        return;
      }
      const id = action.kind === 'test' ? problem.tests[action.test]!.id : problem.repairs[action.repair]!.id;
      expect(best).toMatchObject(action.kind === 'test' ? { kind: 'test', test: id } : { kind: 'repair', repair: id });
      if (deep === 0) return;
      for (const { outcome, state: then } of takeAction(problem, state, action).branches) {
        if (then === undefined) continue;
        const seen =
          action.kind === 'test'
            ? ({ kind: 'result', id: `d${deep}`, test: id, outcome } as const)
            : ({ kind: 'repair-tried', id: `d${deep}`, repair: id, cured: false } as const);
        walk(then, { ...facts, observations: [...facts.observations, seen] }, deep - 1);
      }
    };
    walk(problem.start, intake, 5);
    expect(visited.size).toBeGreaterThan(1);
  });
});
