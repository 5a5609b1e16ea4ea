/** One simulated case under one policy. */
export interface CaseRun {
  readonly policy: string;
  /** Number of the case; the same number is the same engine with the same cause under every policy of one seed. */
  readonly number: number;
  /** The world it happened in. */
  readonly truth: string;
  readonly trueCause: string;
  /** To a confirmed repair, in the problem's currency. */
  readonly cost: number;
  /** Time of all steps; what a specialist does after a referral is not counted. */
  readonly minutes: number;
  readonly steps: number;
  readonly tests: number;
  readonly wrongRepairs: number;
  /** Times an access that counts as opening the engine was opened and no repair of the true cause needs it. */
  readonly needlessOpenings: number;
  readonly end: 'cured' | 'referred';
}
