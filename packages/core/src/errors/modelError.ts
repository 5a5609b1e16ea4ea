import { FaultoddsError, type Problem } from './faultoddsError.ts';

/** Knowledge that does not validate or compile. */
export class ModelError extends FaultoddsError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems);
    this.name = 'ModelError';
  }
}
