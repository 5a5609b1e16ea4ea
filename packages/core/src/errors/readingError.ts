import { FaultoddsError, type Problem } from './faultoddsError.ts';

/** A number, unit or range that cannot be. */
export class ReadingError extends FaultoddsError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems);
    this.name = 'ReadingError';
  }
}
