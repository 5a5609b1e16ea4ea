import { InferenceError, type Problem } from './inferenceError.ts';

/** Thrown when the evidence has probability zero under the network, so that no posterior exists. Code: `evidence-impossible`. */
export class ImpossibleEvidenceError extends InferenceError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super('ImpossibleEvidenceError', problems);
  }
}
