/** An amount with its currency code (or the model's own unit). */
export interface Money {
  readonly amount: number;
  readonly currency: string;
}
