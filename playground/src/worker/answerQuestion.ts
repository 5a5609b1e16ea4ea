import {
  boundedSearch,
  type CompiledModel,
  compileModel,
  credibleRanking,
  evidenceConflict,
  firmAdvice,
  makePlan,
  problemOfCase,
  questionsToAsk,
  rankCauses,
  sensitivity,
  updateBelief,
  whatWouldItTake,
} from '@faultodds/core';
import type { Answer, Question } from './question.ts';

/** Places the search for a plan examines in each round. */
const PLAN_ROUNDS = [5, 40, 160, 400];
/** A plan this close to the best possible one is not searched further. */
const CLOSE_ENOUGH = 0.02;

/** Answers a question, roughly at first where that helps. Each answer replaces the one before.
 * @throws FaultoddsError as core does. */
export function* answerQuestion(compiled: CompiledModel, question: Question): Generator<Answer> {
  const { facts } = question;
  switch (question.kind) {
    case 'conflict':
      return yield { kind: 'conflict', answer: evidenceConflict(compiled, facts) };
    case 'toAsk':
      return yield { kind: 'toAsk', answer: questionsToAsk(compiled, facts) };
    case 'sensitivity':
      return yield { kind: 'sensitivity', answer: sensitivity(compiled, facts) };
    case 'ranking':
      return yield { kind: 'ranking', answer: credibleRanking(compiled, facts, { draws: question.draws }) };
    case 'advice': {
      const { circumstances, draws } = question;
      return yield { kind: 'advice', answer: firmAdvice(compiled, facts, circumstances, { draws }) };
    }
    case 'pairs': {
      const pairs = compileModel(compiled.model, { atMost: 2 });
      return yield { kind: 'pairs', answer: rankCauses(pairs, facts).ranking };
    }
    case 'takes': {
      const belief = updateBelief(compiled, facts);
      const answer = whatWouldItTake(compiled, belief, question.circumstances, question.step);
      return yield { kind: 'takes', answer };
    }
    case 'plan': {
      const belief = updateBelief(compiled, facts);
      for (const steps of PLAN_ROUNDS) {
        const problem = problemOfCase(compiled, belief, question.circumstances);
        const answer = makePlan(problem, boundedSearch.solve(problem, { steps }), { depth: 4 });
        yield { kind: 'plan', answer };
        if (answer.certifiedGap <= CLOSE_ENOUGH) return;
      }
    }
  }
}
