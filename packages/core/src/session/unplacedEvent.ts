import type { CaseEvent } from './caseEvent.ts';

/** An event that a model knows no place for: kept word for word, so that a model that knows one can take it up again. */
export interface UnplacedEvent {
  /** Where it belongs: before the event of this number, from 0; after the last one when there are not that many. */
  readonly before: number;
  readonly event: CaseEvent;
  /** Code of the first problem it had. */
  readonly reason: string;
}
