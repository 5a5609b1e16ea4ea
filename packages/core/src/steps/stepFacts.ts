import type { Money } from '../cost/money.ts';

/** What goes with every step that is proposed, wherever it is: no answer names a step without it. */
export interface StepFacts {
  /** Access that is open already costs nothing more; what is opened is paid with its closing. */
  readonly price: Money;
  /** Whole time, opening and closing included. */
  readonly minutes: number;
  /** Access still to be opened, in order. */
  readonly accessToOpen: readonly string[];
  /** Access that is closed again at the end, in order: what the step opens, and before an engine runs or is driven all that is open. */
  readonly accessToClose: readonly string[];
  /** Ids of everything that can hurt: of the step, of what it opens, works behind and closes; gravest first. */
  readonly cautions: readonly string[];
}
