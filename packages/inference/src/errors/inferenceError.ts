/** One fault found in what the caller gave: where it is, what is wrong, what to do. */
export interface InferenceProblem {
  /** Stable identifier of the kind of fault; wording may change, codes may not. */
  readonly code: string;
  /** JSON Pointer (RFC 6901) into the value that was given; '' is the whole value. */
  readonly path: string;
  /** What was found and what was expected. */
  readonly message: string;
  /** What to do about it. */
  readonly hint: string;
}

const LONGEST = 500;

/** Base of every error this package throws; carries all problems found, the first one also as `code`, `path` and `hint`.
 * @param name class name shown in messages. @param found at least one problem. */
export class InferenceError extends Error {
  readonly code: string;
  readonly path: string;
  readonly hint: string;
  readonly problems: readonly InferenceProblem[];

  constructor(name: string, found: readonly [InferenceProblem, ...InferenceProblem[]]) {
    // a message may quote what was found, and what was found may be a whole file
    const problems = found.map((one) => ({ ...one, message: one.message.slice(0, LONGEST) })) as [
      InferenceProblem,
      ...InferenceProblem[],
    ];
    const first = problems[0];
    const more = problems.length > 1 ? `\n  and ${problems.length - 1} more` : '';
    super(
      `${first.code}: ${first.message}\n  at ${first.path === '' ? '(whole value)' : first.path}\n  hint: ${first.hint}${more}`,
    );
    this.name = name;
    this.code = first.code;
    this.path = first.path;
    this.hint = first.hint;
    this.problems = problems;
  }
}
