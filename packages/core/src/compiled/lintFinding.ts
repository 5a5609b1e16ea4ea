/** Something legal but suspicious in a model. */
export interface LintFinding {
  /** `causes-not-separated`, `test-says-nothing`, `row-never-used`, `weight-without-range`, `number-without-range`, `pair-not-modelled`,
   * `repair-below-access`. */
  readonly code: string;
  /** JSON Pointer. */
  readonly path: string;
  readonly message: string;
}
