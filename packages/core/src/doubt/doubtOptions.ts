/** How many draws, from which seed, and when to stop early. */
export interface DoubtOptions {
  /** Default: 2000 for a ranking, 200 for advice. */
  readonly draws?: number;
  /** Default 1. */
  readonly seed?: number;
  /** Ends early with the draws made so far (at least one). */
  readonly signal?: { readonly aborted: boolean };
}
