// the fault model
export type {
  Access,
  Cause,
  Caution,
  ContextFeature,
  ContextValue,
  Dependence,
  DependentPair,
  Driving,
  Hazard,
  Mechanism,
  Model,
  Repair,
  Requirement,
  Source,
  Test,
  VerificationCheck,
  VerificationFacts,
} from './model/model.ts';
export type { LocalText, LanguageCode } from './model/localText.ts';
export { textIn } from './model/textIn.ts';
export type { Quantity } from './model/quantity.ts';
export type { ConditionalRow, Row } from './model/row.ts';
export type { Dimension } from './units/dimension.ts';
export type {
  Comparison,
  CountsReading,
  MeasuredReading,
  PartCountsReading,
  RateDistribution,
  ReadingBand,
  ReadingDistribution,
  ReadingModel,
  RuleLimit,
  RuleOfThumb,
} from './model/readingModel.ts';
export { parseModel } from './model/parseModel.ts';
export { compileModel, type CompileModelOptions } from './compiled/compileModel.ts';
export type { CompiledModel } from './compiled/compiledModel.ts';
export { modelIdentity, type ModelIdentity } from './model/modelIdentity.ts';
export type { OutcomeNames, PartName, Renaming } from './model/renaming.ts';
export { makeNamesToday, type NamesToday } from './model/makeNamesToday.ts';
export { numberAt } from './model/numberAt.ts';
export { changeNumber } from './compiled/changeNumber.ts';
export { lintModel } from './compiled/lintModel.ts';
export type { LintFinding } from './compiled/lintFinding.ts';
export { rangeOfProbability } from './distributions/rangeOfProbability.ts';

// belief
export type { Context, Facts } from './evidence/facts.ts';
export type { FaultActive, Observation, RepairTried, ResultEvidence, TestResult } from './evidence/observation.ts';
export type { Belief, BeliefWarning, CauseRanking, RankedCause } from './belief/belief.ts';
export { rankCauses } from './belief/rankCauses.ts';
export { beliefOf } from './belief/beliefOf.ts';
export { contextEffects, type ContextEffect } from './belief/contextEffects.ts';
export { questionsToAsk, type IntakeQuestion } from './belief/questionsToAsk.ts';
export { outcomeGivenCause } from './belief/outcomeGivenCause.ts';

// steps
export type { Step } from './steps/step.ts';
export type { StepFacts } from './steps/stepFacts.ts';
export type { ProposedTest } from './steps/proposedTest.ts';
export type { ProposedRepair } from './steps/proposedRepair.ts';
export type { NextStep } from './steps/nextStep.ts';
export { stepFactsOf } from './steps/stepFactsOf.ts';
export { drivingAdvice, type DrivingAdvice } from './steps/drivingAdvice.ts';

// decision
export type { Money } from './cost/money.ts';
export type { Circumstances, Prices } from './cost/circumstances.ts';
export type { Price } from './cost/price.ts';
export type { Advice, OutcomeForecast, RepairPlan, RepairStep, TestAdvice } from './advice/advice.ts';
export type { TestNotNow } from './steps/testNotNow.ts';
export { defaultPrices } from './cost/defaultPrices.ts';
export { proofOfRepair, type ProofOfRepair } from './verification/proofOfRepair.ts';
export { advise } from './advice/advise.ts';
export { actionThresholds, type ActionThresholds, type ThresholdStakes } from './advice/actionThresholds.ts';

// long computations in turns
export type { Cancel } from './turns/cancel.ts';
export type { Turns } from './turns/turns.ts';
export { runInTurns, type RunOptions } from './turns/runInTurns.ts';
export { runToEnd } from './turns/runToEnd.ts';

// decision problems and solvers
export type { Action } from './problem/action.ts';
export type {
  DecisionProblem,
  DecisionState,
  EvidenceSet,
  Limits,
  RepairAction,
  StepCost,
  TestAction,
} from './problem/decisionProblem.ts';
export type { Branch, Transition } from './problem/takeAction.ts';
export { compileCaseProblem } from './problem/compileCaseProblem.ts';
export type { ProblemTables } from './problem/problemTables.ts';
export { compileTableProblem } from './problem/compileTableProblem.ts';
export { allowedActions } from './problem/allowedActions.ts';
export { takeAction } from './problem/takeAction.ts';
export { costOfPolicy } from './solvers/costOfPolicy.ts';
export type { Policy, Solution, Solver, SolverOptions, SolverProgress } from './solvers/solver.ts';
export { repairOrder } from './solvers/repairOrder.ts';
export { informationPerCost } from './solvers/informationPerCost.ts';
export { oneStep } from './solvers/oneStep.ts';
export { makeExpectimax, type ExpectimaxOptions } from './solvers/makeExpectimax.ts';
export type { LowerBound } from './bounds/lowerBound.ts';
export { makeLowerBound } from './bounds/makeLowerBound.ts';
export { boundedSearch, improvingSolutions } from './solvers/boundedSearch.ts';
export { replanning } from './solvers/replanning.ts';
export { exactDynamicProgramming } from './solvers/exactDynamicProgramming.ts';

// plans and the questions around them
export type { CostSpread, Plan, PlanBranch, PlanStep } from './plan/plan.ts';
export { writePlan, type WritePlanOptions } from './plan/writePlan.ts';
export { cautionsOfPlan } from './plan/cautionsOfPlan.ts';
export { repairOrTest, type CauseThresholds, type RepairOrTest } from './advice/repairOrTest.ts';
export {
  whatWouldItTake,
  whatWouldItTakeInTurns,
  type CostlyStep,
  type WhatItTakesOptions,
  type WhatItTakes,
} from './advice/whatWouldItTake.ts';
export type { DecidingTests } from './advice/decidingTests.ts';
export { testsWhileOpen, type TestWhileOpen } from './advice/testsWhileOpen.ts';

// simulation
export type { CaseRun } from './simulation/caseRun.ts';
export { simulate, type SimulationPlan } from './simulation/simulate.ts';
export { makePartsSwapping } from './simulation/makePartsSwapping.ts';
export type { DrawnCase, Truth } from './simulation/truth.ts';
export { makeTruthOfProblem } from './simulation/makeTruthOfProblem.ts';
export { makeTruthOfModel } from './simulation/makeTruthOfModel.ts';
export { drawTruth } from './simulation/drawTruth.ts';
export { makeAdvicePolicy } from './simulation/makeAdvicePolicy.ts';
export { summariseRuns, type RunSummary } from './simulation/summariseRuns.ts';
export { runsAsCsv } from './simulation/runsAsCsv.ts';

// explanation
export type {
  NumberByCause,
  Explanation,
  MovedCause,
  ObservationExplanation,
  ObservationMove,
} from './explanation/explanation.ts';
export { explainCase } from './explanation/explainCase.ts';
export { type MomentRanking, explainMove } from './explanation/explainMove.ts';
export { naturalFrequencies } from './explanation/naturalFrequencies.ts';
export { type RankAfterEachOptions, rankAfterEach } from './explanation/rankAfterEach.ts';
export { weightOfEvidence } from './explanation/weightOfEvidence.ts';

// doubt about the numbers
export type { DoubtOptions } from './doubt/doubtOptions.ts';
export {
  credibleRanking,
  credibleRankingInTurns,
  type CredibleCause,
  type CredibleRanking,
} from './doubt/credibleRanking.ts';
export { adviceFlips, adviceFlipsInTurns, type AdviceFlip, type AdviceFlipOptions } from './doubt/adviceFlips.ts';
export { adviceStability, adviceStabilityInTurns, type AdviceStability } from './doubt/adviceStability.ts';
export { leaderSensitivity, type LeaderSensitivity, type NumberSensitivity } from './doubt/leaderSensitivity.ts';
export type { LinearFunction } from './doubt/linearFunction.ts';
export { modelNumbers, type ModelNumber } from './doubt/modelNumbers.ts';
export { evidenceConflict, type EvidenceConflict } from './doubt/evidenceConflict.ts';
export { sameStep } from './doubt/sameStep.ts';
export { drawModel, type DrawOptions } from './doubt/drawModel.ts';
export { createRandom, type Random } from './distributions/random.ts';

// diagnosability
export {
  diagnosability,
  type Diagnosability,
  type DiagnosabilityOptions,
  type DominatedTest,
  type InseparablePair,
} from './diagnosability/diagnosability.ts';
export type { WeakJudgement, ProvenanceClass } from './diagnosability/provenance.ts';

// session
export type { CaseEvent } from './session/caseEvent.ts';
export type { CaseState } from './session/caseState.ts';
export type { CaseDocument, DemoFacts } from './session/caseDocument.ts';
export type { UnplacedEvent } from './session/unplacedEvent.ts';
export type { CaseNotice, UnknownCauseNotice, UnplacedEventNotice, OtherModelNotice } from './session/caseNotice.ts';
export { caseState, type Session } from './session/session.ts';
export { startCase } from './session/startCase.ts';
export { recordEvent } from './session/recordEvent.ts';
export { nextObservationId } from './session/nextObservationId.ts';
export { canRedo, canUndo, redo, undo } from './session/undo.ts';
export { engineOf } from './session/engineOf.ts';
export { factsOf } from './session/factsOf.ts';
export { circumstancesOf } from './session/circumstancesOf.ts';
export { caseNow, type CaseNow } from './session/caseNow.ts';
export { costsSoFar, type CaseCosts } from './session/costsSoFar.ts';
export { saveCase } from './caseFile/saveCase.ts';
export { loadCase } from './caseFile/loadCase.ts';

// readings
export type {
  CountOfPart,
  CountsOfCylinders,
  CountsOfPart,
  Exposure,
  MeasuredValues,
  PairReading,
  PerCylinderReading,
  Reading,
  SingleReading,
  TrimReading,
} from './reading/reading.ts';
export type { Engine } from './reading/engine.ts';
export { engineLimits } from './reading/engineLimits.ts';
export { parseReading } from './reading/parseReading.ts';
export { kindsOf } from './reading/kindsOf.ts';
export { readingFields, type ReadingField, type ReadingFieldGroup } from './readingForm/readingFields.ts';
export { readingOfEntries } from './readingForm/readingOfEntries.ts';
export { unitsOfEntry } from './readingForm/unitsOfEntry.ts';
export { readingLikelihood, type ReadingLikelihood, type ReadingRemark } from './reading/readingLikelihood.ts';
export type { RuleResult } from './reading/applyRuleOfThumb.ts';
export { unitsOf, type Unit } from './units/unitsOf.ts';
export { convertUnit } from './reading/convertUnit.ts';
export { resistanceAt20 } from './reading/resistanceAt20.ts';
export { misfireShare, type MisfireShare } from './reading/misfireShare.ts';
export { conditionalRateTest } from './distributions/conditionalRateTest.ts';

// trouble codes and monitors
export type { CodeStatus, MalformedCode, TroubleCode } from './codes/troubleCode.ts';
export { parseTroubleCodes, type TroubleCodeList } from './codes/parseTroubleCodes.ts';
export { describeTroubleCode, type CodeCondition, type CodeMeaning } from './codes/describeTroubleCode.ts';
export type { CodeOptions, CodeObservations, CodeRemark, UnusedCode, DecodedCode } from './codes/codeObservations.ts';
export { isFilledByCodes } from './codes/isFilledByCodes.ts';
export { observationsFromCodes } from './codes/observationsFromCodes.ts';
export { decodeMonitorResponse, type MonitorCount, type MonitorResponse } from './codes/decodeMonitorResponse.ts';
export { countsOfMonitors } from './codes/countsOfMonitors.ts';
export { storedAverage } from './codes/storedAverage.ts';

// errors
export { FaultoddsError, type Problem } from './errors/faultoddsError.ts';
export { ModelError } from './errors/modelError.ts';
export { EvidenceError } from './errors/evidenceError.ts';
export { OptionError } from './errors/optionError.ts';
export { ReadingError } from './errors/readingError.ts';
export { editDistance } from './validation/editDistance.ts';
export { nearestId } from './validation/nearestId.ts';
export { CaseError } from './errors/caseError.ts';
