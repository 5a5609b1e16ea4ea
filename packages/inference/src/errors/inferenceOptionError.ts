import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when an option or a plain number is of the wrong type or out of range. Code: `option-invalid`. */
export class InferenceOptionError extends InferenceError {
  constructor(problems: readonly [InferenceProblem, ...InferenceProblem[]]) {
    super('InferenceOptionError', problems);
  }
}
