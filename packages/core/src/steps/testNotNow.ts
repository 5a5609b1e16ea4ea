import type { ProposedTest } from './proposedTest.ts';

/** A test that is not proposed now, and why. */
export interface TestNotNow extends ProposedTest {
  /** `same-question`: another test on record answered it, e.g. the part was replaced instead of swapped. */
  readonly reason: 'equipment' | 'not-applicable' | 'already-done' | 'same-question';
  /** Missing equipment, the intake facts it would need (`feature:value`), or the test that answered it. */
  readonly missing: readonly string[];
}
