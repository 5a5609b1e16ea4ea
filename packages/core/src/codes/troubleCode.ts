import type { Problem } from '../errors/faultoddsError.ts';

/** How a module reports a code: confirmed (service $03), seen once (service $07), or permanent until the module has passed its check
 * (service $0A). */
export type CodeStatus = 'stored' | 'pending' | 'permanent';

/** A trouble code of SAE J2012 / ISO 15031-6, as it stood in a list. */
export interface TroubleCode {
  /** Letter and four digits, upper case: `P0301`. */
  readonly code: string;
  /** `stored` where the list does not say. */
  readonly status: CodeStatus;
  /** Failure type byte of later issues of the standard, two hexadecimal digits, where the list gives it. */
  readonly failureType?: string;
}

/** A piece of a list that is no code. */
export interface MalformedCode {
  readonly text: string;
  /** Position of its first character in the list. */
  readonly at: number;
  readonly hint: string;
  /** As of a problem: `describeProblem` of another language words it from this. */
  readonly wording?: NonNullable<Problem['wording']>;
}
