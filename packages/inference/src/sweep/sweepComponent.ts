import type { RootClasses } from './rootClasses.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Variables that what was observed ties together given the root. Their joint distribution given each class of root states is made when
 * first asked for. */
export interface SweepComponent extends RootClasses {
  readonly variables: readonly number[];
  /** Everything multiplied so far. */
  readonly parts: readonly SweepFactor[];
  /** The components and the factor it was made of. */
  readonly from: readonly SweepComponent[];
  readonly by: SweepFactor;
  /** Whether anything but families was multiplied: if not, all totals are one. */
  readonly isObserved: boolean;
  /** See `solveComponent`. */
  solution: ComponentSolution | null;
  /** Distributions already derived, by their variables. Filled on demand. */
  readonly derived: { readonly variables: readonly number[]; readonly values: Float64Array }[];
}

/** A component multiplied out. */
export interface ComponentSolution {
  /** Proportional to P(variables, likelihoods so far | root class) at [class][configuration], last variable fastest; or, when that would
   * be large, null. */
  readonly joint: Float64Array | null;
  /** log of what a class's joint must be multiplied by, and of its total then; -Infinity for an impossible class. */
  readonly logShift: Float64Array;
  readonly logTotal: Float64Array;
  /** No positive entry of the joint is smaller; 0 when one was lost to underflow. */
  readonly smallest: number;
}
