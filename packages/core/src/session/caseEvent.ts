import type { FaultActive, ResultEvidence, RepairTried } from '../evidence/observation.ts';
import type { Prices } from '../cost/circumstances.ts';
import type { Engine } from '../reading/engine.ts';

/** An intake answer given, or given anew. */
interface ContextSet {
  readonly kind: 'context-set';
  readonly feature: string;
  readonly value: string;
}

/** An intake answer taken back: the feature is not stated any more. */
interface ContextCleared {
  readonly kind: 'context-cleared';
  readonly feature: string;
}

/** The number of cylinders and the one that misfires are stated; replaces what was stated before. Readings of several cylinders take the
 * suspect from it and are checked against it. */
interface EngineSet extends Engine {
  readonly kind: 'engine-set';
}

/** A test was done. Opens the access of the test with all it requires, and closes what it cannot be done with. One of `outcome`, `likelihood` and `reading`; an outcome may stand
 * beside a reading that leaves it open. */
export interface ResultRecorded extends ResultEvidence {
  readonly kind: 'result-recorded';
  /** Unique among all observations the case ever had, retracted ones included. */
  readonly id: string;
  readonly test: string;
  /** Default `yes`. */
  readonly faultActive?: FaultActive;
}

/** A result or a tried repair is taken back, as if it had never been recorded. */
export interface ObservationRetracted {
  readonly kind: 'observation-retracted';
  readonly id: string;
}

/** Something was opened, with all it requires. */
interface AccessOpened {
  readonly kind: 'access-opened';
  readonly access: string;
}

/** Something was closed, with all that stands on it. */
interface AccessClosed {
  readonly kind: 'access-closed';
  readonly access: string;
}

/** The equipment at hand; replaces the list before. */
export interface EquipmentSet {
  readonly kind: 'equipment-set';
  readonly equipment: readonly string[];
}

/** The prices of this place; replaces those before. */
interface PricesSet {
  readonly kind: 'prices-set';
  readonly prices: Prices;
}

/** A remark on the case; changes no belief. */
interface NoteAdded {
  readonly kind: 'note-added';
  readonly text: string;
}

/** The case gets another title. */
interface TitleSet {
  readonly kind: 'title-set';
  readonly title: string;
}

/** Everything that can happen to a case. A case is the list of these, in the order they happened. */
export type CaseEvent =
  | ContextSet
  | ContextCleared
  | EngineSet
  | ResultRecorded
  | RepairTried
  | ObservationRetracted
  | AccessOpened
  | AccessClosed
  | EquipmentSet
  | PricesSet
  | NoteAdded
  | TitleSet;
