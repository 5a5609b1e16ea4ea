import type { CaseEvent } from './caseEvent.ts';

/** An event that a model does not know: kept word for word, so that a model that knows it can use it again. */
export interface UnplacedEvent {
  /** Where it belongs: before the event of this number, from 0; after the last one when there are not that many. */
  readonly before: number;
  readonly event: CaseEvent;
  /** Code of the first problem it had. */
  readonly reason: string;
}
