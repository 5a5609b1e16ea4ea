import { FaultoddsError, type Problem } from './faultoddsError.ts';

/** A saved case, link or row that is damaged, of another shape or version. */
export class CaseError extends FaultoddsError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems);
    this.name = 'CaseError';
  }
}
