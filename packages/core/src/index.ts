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
  EngineState,
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
export type { Advice, FollowUp, OutcomeForecast, RepairPlan, RepairStep, TestAdvice } from './advice/advice.ts';
export type { TestNotNow } from './steps/testNotNow.ts';
export { defaultPrices } from './cost/defaultPrices.ts';
export { needlessOpeningOf } from './cost/needlessOpeningOf.ts';
export { proofOfRepair, type ProofOfRepair } from './verification/proofOfRepair.ts';
export { advise } from './advice/advise.ts';
export { cautionsOfTest } from './advice/cautionsOfTest.ts';
export type { Visit } from './advice/visitOf.ts';

// long computations in turns
export type { Cancel } from './turns/cancel.ts';
export type { Turns } from './turns/turns.ts';
export { runInTurns, type RunOptions } from './turns/runInTurns.ts';
export { runToEnd } from './turns/runToEnd.ts';

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

// errors
export { FaultoddsError, type Problem } from './errors/faultoddsError.ts';
export { ModelError } from './errors/modelError.ts';
export { EvidenceError } from './errors/evidenceError.ts';
export { OptionError } from './errors/optionError.ts';
export { ReadingError } from './errors/readingError.ts';
export { editDistance } from './validation/editDistance.ts';
export { nearestId } from './validation/nearestId.ts';
export { CaseError } from './errors/caseError.ts';
