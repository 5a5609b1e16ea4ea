import type { CompiledModel } from '../compiled/compiledModel.ts';
import { applyEvent } from './applyEvent.ts';
import type { CaseEvent } from './caseEvent.ts';
import type { CaseState } from './caseState.ts';

/** The state a case reaches from `start` through `events`, in order. Pure; the same events give the same state.
 * A retracted observation is skipped with its retraction, so the state equals the one in which it was never recorded:
 * access it opened stays open only if another event opened it. Events are taken as checked. */
export function foldEvents(compiled: CompiledModel, start: CaseState, events: readonly CaseEvent[]): CaseState {
  const retracted = new Set(events.flatMap((event) => (event.kind === 'observation-retracted' ? [event.id] : [])));
  let state = start;
  for (const event of events) {
    if (event.kind === 'observation-retracted') continue;
    if ((event.kind === 'result-recorded' || event.kind === 'repair-tried') && retracted.has(event.id)) continue;
    state = applyEvent(compiled, state, event);
  }
  return state;
}
