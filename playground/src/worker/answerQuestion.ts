import {
  type CompiledModel,
  compileModel,
  credibleRanking,
  evidenceConflict,
  firmAdvice,
  growingPlan,
  makePlan,
  nextActions,
  problemOfCase,
  questionsToAsk,
  rankAfterEach,
  rankCauses,
  sensitivity,
  type SolverProgress,
  updateBelief,
  type WhatItTakes,
  whatWouldItTake,
} from '@faultodds/core';
import type { Answer, Question } from './question.ts';

/** Places the search for a plan examines at most; the reader may stop it sooner. */
const PLAN_STEPS = 1000;
/** A plan this close to the best possible one is not searched further. */
const CLOSE_ENOUGH = 0.02;

/** Answers a question, roughly at first where that helps. Each answer replaces the one before.
 * @throws FaultoddsError as core does. */
export function answerQuestion(compiled: CompiledModel, question: Question, tell: (answer: Answer) => void): void {
  const { facts } = question;
  switch (question.kind) {
    case 'conflict':
      return tell({ kind: 'conflict', answer: evidenceConflict(compiled, facts) });
    case 'toAsk':
      return tell({ kind: 'toAsk', answer: questionsToAsk(compiled, facts) });
    case 'sensitivity':
      return tell({ kind: 'sensitivity', answer: sensitivity(compiled, facts) });
    case 'ranking':
      return tell({ kind: 'ranking', answer: credibleRanking(compiled, facts, { draws: question.draws }) });
    case 'advice': {
      const { circumstances, draws } = question;
      return tell({ kind: 'advice', answer: firmAdvice(compiled, facts, circumstances, { draws }) });
    }
    case 'trial': {
      const belief = updateBelief(compiled, facts);
      const { ranking } = belief;
      tell({ kind: 'trial', answer: { ranking } });
      const { best } = nextActions(compiled, belief, question.circumstances);
      return tell({ kind: 'trial', answer: { ranking, best } });
    }
    case 'trail': {
      // no facts with every moment: they would be half the square of the case
      const moments = rankAfterEach(compiled, facts).map(({ posterior, ranking, logProbabilityOfEvidence }) => ({
        posterior,
        ranking,
        logProbabilityOfEvidence,
      }));
      return tell({ kind: 'trail', answer: moments });
    }
    case 'pairs': {
      const pairs = compileModel(compiled.model, { atMost: 2 });
      return tell({ kind: 'pairs', answer: rankCauses(pairs, facts).ranking });
    }
    case 'takes': {
      const { circumstances, step } = question;
      const onImprove = (answer: WhatItTakes): void => tell({ kind: 'takes', answer });
      const belief = updateBelief(compiled, facts);
      return onImprove(whatWouldItTake(compiled, belief, circumstances, step, { onImprove }));
    }
    case 'plan':
      return searchPlan(compiled, question, tell);
  }
}

/** One search from beginning to end: its bounds at every step forward, the plan each time it has examined twice as much. */
function searchPlan(
  compiled: CompiledModel,
  { facts, circumstances }: Question & { readonly kind: 'plan' },
  tell: (answer: Answer) => void,
): void {
  const problem = problemOfCase(compiled, updateBelief(compiled, facts), circumstances);
  const onImprove = (progress: SolverProgress): void => tell({ kind: 'plan', answer: { progress } });
  for (const solution of growingPlan(problem, { steps: PLAN_STEPS, onImprove })) {
    const plan = makePlan(problem, solution, { depth: 4 });
    tell({ kind: 'plan', answer: { progress: solution.progress, plan } });
    if (plan.certifiedGap <= CLOSE_ENOUGH) return;
  }
}
