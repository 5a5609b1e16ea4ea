import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when a network definition is not a Bayesian network. Codes: `network-shape`, `variable-duplicate`, `variable-name-empty`,
 * `state-missing`, `state-duplicate`, `parent-unknown`, `parent-duplicate`, `cycle`, `table-length`, `table-not-finite`, `table-negative`, `row-not-one`. */
export class NetworkError extends InferenceError {
  constructor(problems: readonly [InferenceProblem, ...InferenceProblem[]]) {
    super('NetworkError', problems);
  }
}
