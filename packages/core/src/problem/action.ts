/** One thing to do in a decision problem, by index of its tests or repairs. */
export type Action =
  | { readonly kind: 'test'; readonly test: number }
  | { readonly kind: 'repair'; readonly repair: number }
  | { readonly kind: 'refer' };

/** Handing the case on: always possible, ends the plan. */
export const REFER: Action = { kind: 'refer' };
