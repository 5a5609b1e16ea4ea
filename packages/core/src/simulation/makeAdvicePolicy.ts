import type { Facts } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';
import type { Belief } from '../belief/belief.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { advise } from '../advice/advise.ts';
import { accessIds } from '../cost/accessBits.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import type { NextStep } from '../steps/nextStep.ts';
import type { SettleOptions } from '../settling/createAdviceSearch.ts';
import { settleAdvice } from '../settling/settleAdvice.ts';
import { REFER } from '../problem/action.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import type { Policy } from '../solvers/solver.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';

/** The advice a person gets who records every result and asks again: at each state `beliefOf` and `advise` are called with everything
 * recorded on the way, and the best step is followed. Where they refuse (what happened cannot happen in this model) the case is referred.
 * `problem` is that of the same model, facts and circumstances.
 * @example
 * ```ts
 * const believed = compileCaseProblem(compiled, belief);
 * const policy = makeAdvicePolicy(compiled, facts, {}, believed);
 * policy(believed.start).kind === advise(compiled, belief).best.kind // true
 * ``` */
export function makeAdvicePolicy(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  problem: DecisionProblem,
): Policy {
  return makePolicyOf(compiled, facts, circumstances, problem, (belief, now) => advise(compiled, belief, now).best);
}

/** The same for the advice that looks several steps ahead (`settleAdvice`), sought anew at every state.
 * @throws OptionError at the first state
 * @example
 * ```ts
 * const believed = compileCaseProblem(compiled, belief);
 * const policy = makeSettledPolicy(compiled, facts, {}, believed, { steps: 3 });
 * policy(believed.start).kind === settleAdvice(compiled, belief, {}, { steps: 3 }).best.kind // true
 * ``` */
export function makeSettledPolicy(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  problem: DecisionProblem,
  options: SettleOptions = {},
): Policy {
  return makePolicyOf(
    compiled,
    facts,
    circumstances,
    problem,
    (belief, now) => settleAdvice(compiled, belief, now, options).best,
  );
}

function makePolicyOf(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  problem: DecisionProblem,
  bestOf: (belief: Belief, circumstances: Circumstances) => NextStep,
): Policy {
  const testAt = new Map(problem.tests.map(({ id }, at) => [id, at]));
  const repairAt = new Map(problem.repairs.map(({ id }, at) => [id, at]));
  return (state) => {
    // no id of a case holds a colon: none of these is taken
    const since = state.evidence.results.map(({ test, outcome }, at): Observation => {
      const { id, outcomes } = problem.tests[test]!;
      return { kind: 'result', id: `ahead:step-${at}`, test: id, outcome: outcomes[outcome]! };
    });
    const tried = state.tried.map((repair): Observation => {
      const { id } = problem.repairs[repair]!;
      return { kind: 'repair-tried', id: `ahead:repair-${repair}`, repair: id, cured: false };
    });
    try {
      const belief = beliefOf(compiled, {
        ...facts,
        observations: [...facts.observations, ...since, ...tried],
      });
      const best = bestOf(belief, { ...circumstances, openAccess: accessIds(compiled, state.open) });
      const test = best.kind === 'test' ? testAt.get(best.test) : undefined;
      if (test !== undefined) return { kind: 'test', test };
      const repair = best.kind === 'repair' ? repairAt.get(best.repair) : undefined;
      return repair === undefined ? REFER : { kind: 'repair', repair };
    } catch (error) {
      if (error instanceof EvidenceError && error.problems.some(({ code }) => code === 'evidence-impossible'))
        return REFER;
      throw error;
    }
  };
}
