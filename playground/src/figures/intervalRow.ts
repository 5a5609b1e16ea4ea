/** A probability with its range, in words and as positions from 0 to 1. */
export interface IntervalRow {
  readonly id: string;
  readonly label: string;
  readonly chance: string;
  /** '' while it is being worked out. */
  readonly range: string;
  readonly at: number;
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** Rests on judgement. */
  readonly judged: boolean;
}
