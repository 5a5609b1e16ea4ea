import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { drawIndex } from './drawIndex.ts';
import type { Truth } from './truth.ts';

/** The world exactly as a decision problem says: outcomes are drawn given the cause and all results so far. Exact for any problem; each
 * state costs a look at its outcome table.
 * @example
 * ```ts
 * const { draw, cure } = makeTruthOfProblem(problem);
 * draw(() => 0.7).cause // 1, the second: the first has a probability of 0.6
 * cure(1, 1) // 1, the second repair cures it
 * ``` */
export function makeTruthOfProblem(problem: DecisionProblem, id = 'as-believed'): Truth {
  const { start, tests, repairFacts } = problem;
  return {
    id,
    causes: problem.causes,
    draw: (random) => {
      const cause = drawIndex(start.posterior, random());
      return {
        cause,
        outcome: (test, evidence, uniform) => {
          // the same results as evidence of this problem: that of the believed one may have other numbers
          const here = evidence.results.reduce(
            (set, seen) => problem.evidenceAfter(set, seen.test, seen.outcome),
            start.evidence,
          );
          const { length } = tests[test]!.outcomes;
          return drawIndex(problem.outcomeTable(here, test), uniform, cause * length, length);
        },
      };
    },
    cure: (repair, cause) => repairFacts.cures[repair]!.find((cure) => cure.cause === cause)?.success ?? 0,
    accessNeeded: (cause) => repairFacts.needless.neededBy[cause]!,
  };
}
