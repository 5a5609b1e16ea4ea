import {
  type Circumstances,
  type CompiledModel,
  type Facts,
  compileModel,
  advise,
  questionsToAsk,
  rankCauses,
  runInTurns,
  type RunOptions,
  beliefOf,
} from '@faultodds/core';
import {
  credibleRankingInTurns,
  evidenceConflict,
  adviceStabilityInTurns,
  leaderSensitivity,
} from '@faultodds/core/doubt';
import { rankAfterEach } from '@faultodds/core/explanation';
import {
  beginSettling,
  boundedSearch,
  writePlan,
  writePlanInTurns,
  compileCaseProblem,
  type SettledAdvice,
  type Solution,
  type SolverProgress,
  type WhatItTakes,
  whatWouldItTakeInTurns,
} from '@faultodds/core/planning';
import type { Answer, Question } from './question.ts';

/** Places the search for a plan examines at most; the reader may stop it sooner. */
const PLAN_STEPS = 1000;
/** A plan this close to the best possible one is not searched further. */
const CLOSE_ENOUGH = 0.02;

/** Answers a question, roughly at first where that helps. Each answer replaces the one before. The kinds of `inTurns` pause between turns.
 * @throws FaultoddsError as core does, and what the pause rejects with. */
export async function answerQuestion(
  compiled: CompiledModel,
  question: Question,
  reply: (answer: Answer) => void,
  pause: Pause,
): Promise<void> {
  const { facts } = question;
  switch (question.kind) {
    case 'conflict':
      return reply({ kind: 'conflict', answer: evidenceConflict(compiled, facts) });
    case 'toAsk':
      return reply({ kind: 'toAsk', answer: questionsToAsk(compiled, facts) });
    case 'sensitivity':
      return reply({ kind: 'sensitivity', answer: leaderSensitivity(compiled, facts) });
    case 'ranking':
      return reply({
        kind: 'ranking',
        answer: await runInTurns(credibleRankingInTurns(compiled, facts, { draws: question.draws }), { pause }),
      });
    case 'advice': {
      const { circumstances, draws } = question;
      const advice = adviceStabilityInTurns(compiled, facts, circumstances, { draws });
      return reply({ kind: 'advice', answer: await runInTurns(advice, { pause }) });
    }
    case 'ahead': {
      const { circumstances, steps } = question;
      const turns = searchOf(compiled, facts, circumstances).inTurns(steps === undefined ? {} : { steps });
      // what stands is fixed by the first answer: only what looks longer tells more than one
      const onMeanwhile = (answer: SettledAdvice): void => {
        if (steps !== undefined) reply({ kind: 'ahead', answer });
      };
      return reply({ kind: 'ahead', answer: await runInTurns(turns, { pause, onMeanwhile }) });
    }
    case 'trial': {
      const belief = beliefOf(compiled, facts);
      const { ranking } = belief;
      reply({ kind: 'trial', answer: { ranking } });
      const { best } = advise(compiled, belief, question.circumstances);
      return reply({ kind: 'trial', answer: { ranking, best } });
    }
    case 'history': {
      // no facts with every moment: they would be half the square of the case
      const moments = rankAfterEach(compiled, facts).map(({ posterior, ranking, logProbabilityOfEvidence }) => ({
        posterior,
        ranking,
        logProbabilityOfEvidence,
      }));
      return reply({ kind: 'history', answer: moments });
    }
    case 'pairs': {
      const pairs = compileModel(compiled.model, { atMost: 2 });
      return reply({ kind: 'pairs', answer: rankCauses(pairs, facts).ranking });
    }
    case 'whatItTakes': {
      const { circumstances, step } = question;
      const onImprove = (answer: WhatItTakes): void => reply({ kind: 'whatItTakes', answer });
      const belief = beliefOf(compiled, facts);
      const turns = whatWouldItTakeInTurns(compiled, belief, circumstances, step, { onImprove });
      return onImprove(await runInTurns(turns, { pause }));
    }
    case 'plan':
      return searchPlan(compiled, question, reply, pause);
  }
}

type AdviceSearch = ReturnType<typeof beginSettling>;

const searches = new WeakMap<CompiledModel, { readonly of: string; readonly search: AdviceSearch }>();

/** The search for one case; asked about the same case it is the same one, and goes on. */
function searchOf(compiled: CompiledModel, facts: Facts, circumstances: Circumstances): AdviceSearch {
  const of = JSON.stringify([facts, circumstances]);
  const known = searches.get(compiled);
  if (known?.of === of) return known.search;
  const search = beginSettling(compiled, beliefOf(compiled, facts), circumstances);
  searches.set(compiled, { of, search });
  return search;
}

/** One search from beginning to end: its bounds at every step forward, the plan each time it has examined twice as much. */
type Pause = RunOptions<never>['pause'];

async function searchPlan(
  compiled: CompiledModel,
  { facts, circumstances }: Question & { readonly kind: 'plan' },
  reply: (answer: Answer) => void,
  pause: Pause,
): Promise<void> {
  const problem = compileCaseProblem(compiled, beliefOf(compiled, facts), circumstances);
  const onImprove = (progress: SolverProgress): void => reply({ kind: 'plan', answer: { progress } });
  const enough = new AbortController();
  const onMeanwhile = (solution: Solution): void => {
    // what nobody has looked into yet is marked meanwhile: the search goes on
    const plan = writePlan(problem, solution, { depth: 4, leastLooked: 1 });
    reply({ kind: 'plan', answer: { progress: solution.progress, plan } });
    if (plan.certifiedGap <= CLOSE_ENOUGH) enough.abort();
  };
  const search = boundedSearch.inTurns(problem, { steps: PLAN_STEPS, onImprove, signal: enough.signal });
  const last = await runInTurns(search, { pause, onMeanwhile });
  const plan = await runInTurns(writePlanInTurns(problem, last, { depth: 4 }), { pause });
  reply({ kind: 'plan', answer: { progress: last.progress, plan } });
}
