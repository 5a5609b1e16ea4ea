import { FaultoddsError, type Problem } from './faultoddsError.ts';

/** An option, or another argument that is no knowledge, evidence, reading or case: of the wrong type, or out of range. */
export class OptionError extends FaultoddsError {
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems);
    this.name = 'OptionError';
  }
}
