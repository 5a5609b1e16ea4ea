/** One thing that is wrong: where, what, and what to do about it. */
export interface Problem {
  /** Stable, documented: programs may switch on it. */
  readonly code: string;
  /** JSON Pointer to the offending value, `''` for the whole. */
  readonly path: string;
  readonly message: string;
  readonly hint: string;
}

/** Base of all errors of this package. `code`, `path` and `hint` are those of the first problem; `problems` holds all of them. */
export class FaultoddsError extends Error {
  readonly code: string;
  readonly path: string;
  readonly hint: string;
  readonly problems: readonly Problem[];

  constructor(problems: readonly [Problem, ...Problem[]]) {
    const [first] = problems;
    const more = problems.length > 1 ? `\n  and ${problems.length - 1} more` : '';
    super(`${first.code}: ${first.message}\n  at ${first.path || '/'}\n  hint: ${first.hint}${more}`);
    this.name = 'FaultoddsError';
    this.code = first.code;
    this.path = first.path;
    this.hint = first.hint;
    this.problems = problems;
  }
}
