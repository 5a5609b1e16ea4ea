/** constant + slope x. */
export interface LinearFunction {
  readonly constant: number;
  readonly slope: number;
}

/** P(evidence, cause) / P(evidence) of every cause as a linear function of one number of the model. */
export interface JointLines {
  /** JSON Pointer of the number. */
  readonly path: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** A weight: may grow beyond 1. */
  readonly unbounded: boolean;
  /** In the model's order of causes. */
  readonly constants: Float64Array;
  readonly slopes: Float64Array;
}
