/** The engine of a case, as far as readings and codes need it. Cylinders are numbered as the maker counts them, from 1. */
export interface Engine {
  /** Within `engineLimits`. */
  readonly cylinders: number;
  /** The cylinder that misfires, at most `cylinders`. */
  readonly suspect: number;
  /** The bank of the suspect, where it is known: mixture and cam codes name a bank. */
  readonly bank?: 1 | 2;
}
