import type { Money } from '../cost/money.ts';

/** What goes with every step that is proposed, wherever it is: no answer names a step without it. */
export interface StepFacts {
  /** Access that is open already costs nothing more; what is opened is paid with its closing. */
  readonly price: Money;
  /** Whole time, opening and closing included. */
  readonly minutes: number;
  /** Access still to be opened, in order. */
  readonly accessToOpen: readonly string[];
  /** Access that is closed again at the end, in order: what the step opens; before the engine is cranked, runs or is
   * driven, what has to be closed for that. */
  readonly accessToClose: readonly string[];
  /** Ids of everything that can hurt: of the step, of what it opens, works behind and closes; gravest first. */
  readonly cautions: readonly string[];
}
