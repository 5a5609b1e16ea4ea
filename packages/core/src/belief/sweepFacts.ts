import { sweepModel } from '../compiled/sweepModel.ts';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { appliesHere } from '../evidence/appliesHere.ts';
import { contextPrior } from './contextPrior.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { Facts } from '../evidence/facts.ts';
import { findFactsProblems } from '../evidence/findFactsProblems.ts';
import { posteriorOf } from './posteriorOf.ts';

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
    throw new EvidenceError([problemFor('evidence-impossible/context', '/context', {})]);
  }
  const tests =
    options.posteriorOnly === true ? [] : compiled.testList.filter((test) => appliesHere(test.test, facts.context));
  const swept = sweepModel(compiled, { likelihoods, targets: tests.map((test) => test.table) });
  return { facts, prior, ...posteriorOf(prior, swept.logEvidenceGivenRoot), tests, outcomeGivenCause: swept.targets };
}
