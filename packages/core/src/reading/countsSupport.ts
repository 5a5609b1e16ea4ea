/** What misfire counts say about the outcomes of a test. */
export interface CountsSupport {
  /** outcome -> likelihood of the counts, scaled so that the largest is 1. */
  readonly byOutcome: Readonly<Record<string, number>>;
  /** Another cylinder than the suspect misfires (or did before the part was swapped): then the counts say nothing about this case. */
  readonly elsewhere: boolean;
}
