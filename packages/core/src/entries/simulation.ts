// simulated cases: what a way of deciding costs over many
export type { CaseRun } from '../simulation/caseRun.ts';
export { simulate, type SimulationPlan } from '../simulation/simulate.ts';
export { makePartsSwapping } from '../simulation/makePartsSwapping.ts';
export type { DrawnCase, Truth } from '../simulation/truth.ts';
export { makeTruthOfProblem } from '../simulation/makeTruthOfProblem.ts';
export { makeTruthOfModel } from '../simulation/makeTruthOfModel.ts';
export { drawTruth } from '../simulation/drawTruth.ts';
export { makeAdvicePolicy, makeSettledPolicy } from '../simulation/makeAdvicePolicy.ts';
export { summariseRuns, type RunSummary } from '../simulation/summariseRuns.ts';
export { runsAsCsv } from '../simulation/runsAsCsv.ts';
