import type { Reading } from '../reading/reading.ts';

/** Whether the misfire was present while the test was run. */
export type FaultActive = 'yes' | 'no' | 'unknown';

/** What a test showed: one of its outcomes, how strongly what was seen speaks for each, or the numbers that were read. */
export interface ResultEvidence {
  readonly outcome?: string;
  /** outcome -> relative likelihood, instead of `outcome`: "about 3 to 1 that it dipped" is `{ dipped: 3, even: 1 }`. Only the ratios
   * count: P(evidence) is that of weights of which the largest is one, at any scale. */
  readonly likelihood?: Readonly<Record<string, number>>;
  /** Numbers, instead of an outcome. An outcome may be given as well where the numbers fit more than one: 40 % leak-down, heard at the
   * tailpipe. Number and outcome are one result, counted once. */
  readonly reading?: Reading;
  readonly note?: string;
}

/** The result of a test. */
export interface TestResult extends ResultEvidence {
  readonly kind: 'result';
  /** Unique within the case. */
  readonly id: string;
  readonly test: string;
  /** Default `yes`. Matters only for tests that need the fault to be present. */
  readonly faultActive?: FaultActive;
}

/** A repair that was carried out and checked. What was opened for it was paid and closed with it, and what
 * cannot be driven with is closed. */
export interface RepairTried {
  readonly kind: 'repair-tried';
  /** Unique within the case. */
  readonly id: string;
  readonly repair: string;
  readonly cured: boolean;
  readonly note?: string;
}

/** Everything that can be seen or done and then speaks for or against causes. */
export type Observation = TestResult | RepairTried;
