/** A test that is not proposed, and why. */
export interface TestNotNow {
  readonly test: string;
  /** `same-question`: another test on record answered it, e.g. the part was replaced instead of swapped. */
  readonly reason: 'equipment' | 'not-applicable' | 'already-done' | 'same-question';
  /** Missing equipment, the intake facts it would need (`feature:value`), or the test that answered it. */
  readonly missing: readonly string[];
}
