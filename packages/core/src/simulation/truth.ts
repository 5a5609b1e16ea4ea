import type { EvidenceSet } from '../problem/decisionProblem.ts';
import type { Random } from '../distributions/random.ts';

/** One engine with its fault: what its tests show and which repairs cure it. */
export interface DrawnCase {
  /** Index of the true cause. */
  readonly cause: number;
  /** Outcome of a test, by index, after the results in `evidence`; `uniform` is in [0, 1). */
  readonly outcome: (test: number, evidence: EvidenceSet, uniform: number) => number;
}

/** What the world is taken to be in a simulation, with the tests, repairs and causes of the problem that is believed, in its order. */
export interface Truth {
  /** Name in the rows. */
  readonly id: string;
  readonly causes: readonly string[];
  readonly draw: (random: Random) => DrawnCase;
  /** P(cured | cause) of a repair, by index. */
  readonly cure: (repair: number, cause: number) => number;
  /** Access that counts as opening the engine and that some repair of the cause needs, as bits. */
  readonly accessNeeded: (cause: number) => number;
}
