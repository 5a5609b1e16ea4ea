/** What one observation weighs for one cause. */
export interface WeightRow {
  readonly id: string;
  /** Number of the observation in the case. */
  readonly mark: string;
  readonly label: string;
  readonly decibans: number;
  /** The weight in words, direction included. */
  readonly words: string;
}
