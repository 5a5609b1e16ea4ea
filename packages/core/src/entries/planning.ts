// decision problems, solvers, plans, and what a step would have to be worth
export { actionThresholds, type ActionThresholds, type ThresholdStakes } from '../advice/actionThresholds.ts';
export type { Action } from '../problem/action.ts';
export type {
  DecisionProblem,
  DecisionState,
  EvidenceSet,
  Limits,
  RepairAction,
  StepCost,
  TestAction,
} from '../problem/decisionProblem.ts';
export type { Branch, Transition } from '../problem/takeAction.ts';
export { compileCaseProblem } from '../problem/compileCaseProblem.ts';
export type { ProblemTables } from '../problem/problemTables.ts';
export { compileTableProblem } from '../problem/compileTableProblem.ts';
export { allowedActions } from '../problem/allowedActions.ts';
export { takeAction } from '../problem/takeAction.ts';
export { costOfPolicy } from '../solvers/costOfPolicy.ts';
export type { Grounds, Policy, Solution, Solver, SolverOptions, SolverProgress } from '../solvers/solver.ts';
export { repairOrder } from '../solvers/repairOrder.ts';
export { informationPerCost } from '../solvers/informationPerCost.ts';
export { oneStep } from '../solvers/oneStep.ts';
export { makeExpectimax, type ExpectimaxOptions } from '../solvers/makeExpectimax.ts';
export type { LowerBound } from '../bounds/lowerBound.ts';
export { makeLowerBound } from '../bounds/makeLowerBound.ts';
export { boundedSearch, improvingSolutions } from '../solvers/boundedSearch.ts';
export { replanning } from '../solvers/replanning.ts';
export type { OtherStep, SettledAdvice } from '../settling/settledAdvice.ts';
export type { SettleOptions } from '../settling/createAdviceSearch.ts';
export { beginSettling, settleAdvice, settleAdviceInTurns } from '../settling/settleAdvice.ts';
export { exactDynamicProgramming } from '../solvers/exactDynamicProgramming.ts';
export type { CostSpread, Plan, PlanBranch, PlanStep } from '../plan/plan.ts';
export { writePlan, writePlanInTurns, type WritePlanOptions } from '../plan/writePlan.ts';
export { cautionsOfPlan } from '../plan/cautionsOfPlan.ts';
export { repairOrTest, type CauseThresholds, type RepairOrTest } from '../advice/repairOrTest.ts';
export {
  whatWouldItTake,
  whatWouldItTakeInTurns,
  type CostlyStep,
  type WhatItTakesOptions,
  type WhatItTakes,
} from '../advice/whatWouldItTake.ts';
export type { DecidingTests } from '../advice/decidingTests.ts';
export { testsWhileOpen, type TestWhileOpen } from '../advice/testsWhileOpen.ts';
