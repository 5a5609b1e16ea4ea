import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when the evidence has probability zero under the network, so that no posterior exists. Code: `evidence-impossible`. */
export class ImpossibleEvidenceError extends InferenceError {
  constructor(problems: readonly [InferenceProblem, ...InferenceProblem[]]) {
    super('ImpossibleEvidenceError', problems);
  }
}

/** The error for evidence of probability zero. */
export function impossibleEvidence(): ImpossibleEvidenceError {
  return new ImpossibleEvidenceError([
    {
      code: 'evidence-impossible',
      path: '',
      message: 'the evidence has probability zero',
      hint: 'drop or soften a finding; a table entry of exactly 0 rules it out',
    },
  ]);
}
