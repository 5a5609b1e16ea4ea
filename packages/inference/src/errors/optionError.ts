import { InferenceError, type Problem } from './inferenceError.ts';

/** Thrown when an option or a plain number is of the wrong type or out of range. Code: `option-invalid`. */
export class OptionError extends InferenceError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super('OptionError', problems);
  }
}
