import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when a question does not fit the network. Codes: `query-variable-unknown`, `query-variable-duplicate`, `query-state-unknown`,
 * `root-has-parents`, `factor-length`, `factor-invalid` (negative or not finite), `target-length`, `target-row-not-one`, `target-duplicate`. */
export class QueryError extends InferenceError {
  constructor(problems: readonly [InferenceProblem, ...InferenceProblem[]]) {
    super('QueryError', problems);
  }
}
