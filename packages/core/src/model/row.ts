/** A row of a table: probabilities that sum to 1, worth `ess` cases. The 5-95 % range of each follows from the Beta of that size. */
export interface Row {
  readonly p: Readonly<Record<string, number>>;
  readonly ess: number;
  readonly source: string;
}

/** A row that applies when every named parent is in one of the named states; `{}` is the default and comes last. First match wins. */
export interface ConditionalRow extends Row {
  readonly when: Readonly<Record<string, readonly string[]>>;
}
