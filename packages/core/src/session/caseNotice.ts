import type { Problem } from '../errors/faultoddsError.ts';
import type { ModelIdentity } from '../model/modelIdentity.ts';
import type { CaseEvent } from './caseEvent.ts';

/** What a reader should know about a case that was opened: that it was made with another version of the model, or other numbers in it, and
 * which of its entries the model does not know. Nothing of that is lost: `saveCase` writes it out again. */
export type CaseNotice = OtherModelNotice | UnplacedEventNotice | UnknownCauseNotice;

/** Same model, another version or other contents. What was believed then need not be what is believed now. */
export interface OtherModelNotice {
  readonly kind: 'model-differs';
  readonly made: ModelIdentity;
  readonly here: ModelIdentity;
}

/** An event that would still count, and does not. Equipment counts as far as it is known. */
export interface UnplacedEventNotice {
  readonly kind: 'event-unplaced';
  readonly event: CaseEvent;
  /** At least one; paths lead into the document. */
  readonly problems: readonly Problem[];
}

/** The cause an invented case names is none of this model. */
export interface UnknownCauseNotice {
  readonly kind: 'cause-unknown';
  readonly cause: string;
  readonly problems: readonly Problem[];
}
