import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when evidence does not fit the network. Codes: `evidence-variable-unknown`, `evidence-state-unknown`,
 * `evidence-likelihood-length`, `evidence-likelihood-invalid` (negative or not finite). */
export class EvidenceInputError extends InferenceError {
  constructor(problems: readonly [InferenceProblem, ...InferenceProblem[]]) {
    super('EvidenceInputError', problems);
  }
}
