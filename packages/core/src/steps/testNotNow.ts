import type { ProposedTest } from './proposedTest.ts';

/** A test that is not proposed now, and why. */
export interface TestNotNow extends ProposedTest {
  /** `same-question`: another test on record or an intake fact answered it, e.g. the part was replaced instead of swapped; `nothing-to-follow`: it looks closer at
   * what another test has to show first; `engine-apart`: something is open with which the engine cannot be turned or run. */
  readonly reason:
    'equipment' | 'not-applicable' | 'already-done' | 'same-question' | 'nothing-to-follow' | 'engine-apart';
  /** Missing equipment, the intake facts it would need (`feature:value`), the test or intake fact that answered it, the tests it follows, or the
   * access that has to be closed first. */
  readonly missing: readonly string[];
}
