import { FaultoddsError, type Problem } from './faultoddsError.ts';

/** Unknown, contradictory or impossible evidence. */
export class EvidenceError extends FaultoddsError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems);
    this.name = 'EvidenceError';
  }
}
