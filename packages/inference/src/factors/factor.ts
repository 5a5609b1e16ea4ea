/** A non-negative table over variables (a potential).
 * `values` has length = product of the cardinalities, last variable fastest. Borrowed: never written after it was made. */
export interface Factor {
  /** Positions in the network, no repeats. */
  readonly variables: readonly number[];
  readonly values: Float64Array;
}
