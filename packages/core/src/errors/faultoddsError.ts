import { shortenMessage } from './shortenMessage.ts';

/** One thing that is wrong: where, what, and what to do about it. */
export interface Problem {
  /** Stable, documented: programs may switch on it. */
  readonly code: string;
  /** JSON Pointer to the offending value, `''` for the whole. */
  readonly path: string;
  readonly message: string;
  readonly hint: string;
  /** What message and hint are made of, for `describeProblem` of another language. Absent where they were written by hand. */
  readonly wording?: { readonly key: string; readonly parts: unknown };
}

/** Base of all errors of this package. `code`, `path` and `hint` are those of the first problem; `problems` holds all of them. */
export class FaultoddsError extends Error {
  readonly code: string;
  readonly path: string;
  readonly hint: string;
  readonly problems: readonly Problem[];

  constructor(found: readonly [Problem, ...Problem[]]) {
    const [first, ...others] = found;
    const problems = [shortened(first), ...others.map(shortened)] as const;
    const more = problems.length > 1 ? `\n  and ${problems.length - 1} more` : '';
    super(`${first.code}: ${problems[0].message}\n  at ${first.path || '/'}\n  hint: ${first.hint}${more}`);
    this.name = 'FaultoddsError';
    this.code = first.code;
    this.path = first.path;
    this.hint = first.hint;
    this.problems = problems;
  }
}

function shortened(problem: Problem): Problem {
  const message = shortenMessage(problem.message);
  return message === problem.message ? problem : { ...problem, message };
}
