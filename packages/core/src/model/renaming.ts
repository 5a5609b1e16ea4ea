/** A part of a model by its id and, where ids are unique only within something, by that too. */
export type PartName =
  | { readonly model: string }
  | { readonly test: string }
  | { readonly test: string; readonly outcome: string }
  | { readonly test: string; readonly reading: string }
  | { readonly feature: string }
  | { readonly feature: string; readonly value: string }
  | { readonly cause: string }
  | { readonly repair: string }
  | { readonly access: string }
  | { readonly equipment: string };

/** Several outcomes of one test: what one outcome has become. A result that named it says "one of these". */
export interface OutcomeNames {
  readonly test: string;
  readonly outcomes: readonly string[];
}

/** What a part of an earlier version of the model is called in this one; so cases, links and files of earlier versions load for ever.
 * An outcome may have moved to another test, a value to another feature: that is how a test or a feature is split. */
export interface Renaming {
  /** No part of this version is called so any more. */
  readonly was: PartName;
  /** Of the same kind, or in its turn an earlier name. Absent: it is gone; what named it is kept without effect. */
  readonly is?: PartName | OutcomeNames;
  /** Why, for people. */
  readonly note?: string;
}
