import { sweepRoot } from '@faultodds/inference/sweeps';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { makeProblem } from '../errors/makeProblem.ts';
import type { CompiledModel, CompiledTest } from '../model/compiledModel.ts';
import { appliesHere } from './appliesHere.ts';
import { contextPrior } from './contextPrior.ts';
import { evidenceOf } from './evidenceOf.ts';
import type { Facts } from './facts.ts';
import { findFactsProblems } from './findFactsProblems.ts';

/** Belief as arrays, for arithmetic. Causes in the model's order; borrowed, do not write. */
export interface SweptFacts {
  readonly facts: Facts;
  readonly prior: Float64Array;
  readonly posterior: Float64Array;
  readonly logProbabilityOfEvidence: number;
  /** Tests that apply on this car. */
  readonly tests: readonly CompiledTest[];
  /** test id -> P(outcome | cause, everything recorded) at [cause * outcomes + outcome]. */
  readonly outcomeGivenCause: ReadonlyMap<string, Float64Array>;
}

/** What a sweep leaves out. */
export interface SweepOptions {
  /** Leave out the predictives of the tests: only the posterior is wanted. Default false. */
  readonly posteriorOnly?: boolean;
}

/** One exact sweep over the causes: posterior, P(evidence) and the predictive of every applicable test given each cause.
 * @throws EvidenceError a shape that is wrong, unknown ids, and `evidence-impossible` when no cause can produce what was recorded. */
export function sweepFacts(compiled: CompiledModel, facts: Facts, options: SweepOptions = {}): SweptFacts {
  const misshapen = findFactsProblems(facts);
  if (atLeastOne(misshapen)) throw new EvidenceError(misshapen);
  const likelihoods = evidenceOf(compiled, facts);
  const prior = contextPrior(compiled, facts.context);
  if (prior.every((p) => p === 0)) {
    throw new EvidenceError([makeProblem('evidence-impossible/context', '/context', {})]);
  }
  const tests =
    options.posteriorOnly === true ? [] : compiled.testList.filter((test) => appliesHere(test.test, facts.context));
  const swept = sweepRoot(compiled.sweep, { likelihoods, targets: tests.map((test) => test.table) });
  const { posterior, logSum } = posteriorOf(prior, swept.logEvidenceGivenRoot);
  if (logSum === -Infinity) {
    throw new EvidenceError([makeProblem('evidence-impossible', '/observations', {})]);
  }
  return { facts, prior, posterior, logProbabilityOfEvidence: logSum, tests, outcomeGivenCause: swept.targets };
}

/** Posterior from prior and log likelihoods, shifted by the largest so that long evidence cannot underflow. */
function posteriorOf(prior: Float64Array, logLikelihood: Float64Array): { posterior: Float64Array; logSum: number } {
  const logJoint = prior.map((p, at) => Math.log(p) + logLikelihood[at]!);
  const largest = logJoint.reduce((a, b) => Math.max(a, b), -Infinity);
  if (largest === -Infinity) return { posterior: prior, logSum: -Infinity };
  const weights = logJoint.map((x) => Math.exp(x - largest));
  const sum = weights.reduce((a, b) => a + b, 0);
  return { posterior: weights.map((w) => w / sum), logSum: largest + Math.log(sum) };
}
