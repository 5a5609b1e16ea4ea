/** A number of the model with its provenance: best estimate, 5-95 % range, equivalent sample size (in cases) and the id of its source. */
export interface Quantity {
  readonly best: number;
  readonly low: number;
  readonly high: number;
  readonly ess: number;
  readonly source: string;
  /** True by definition (the part does not exist): only then is a multiplier of 0 allowed. */
  readonly definitional?: boolean;
}
