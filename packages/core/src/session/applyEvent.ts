import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { CaseEvent, ObservationRetracted } from './caseEvent.ts';
import type { CaseState } from './caseState.ts';
import { closeWithDependents } from './closeWithDependents.ts';
import { openAfterDrive, openAfterResult } from './openAfter.ts';
import { openWithPrerequisites } from './openWithPrerequisites.ts';

/** The state after one more event. A retraction is no step forward: it needs the whole history, see `foldEvents`. */
export function applyEvent(
  compiled: CompiledModel,
  state: CaseState,
  event: Exclude<CaseEvent, ObservationRetracted>,
): CaseState {
  const { model } = compiled;
  switch (event.kind) {
    case 'context-set':
      return { ...state, context: { ...state.context, [event.feature]: event.value } };
    case 'context-cleared': {
      const { [event.feature]: _cleared, ...context } = state.context;
      return { ...state, context };
    }
    case 'engine-set': {
      const { kind: _kind, ...engine } = event;
      return { ...state, engine };
    }
    case 'result-recorded': {
      const { kind: _kind, ...result } = event;
      return {
        ...state,
        observations: [...state.observations, { kind: 'result', ...result }],
        openAccess: openAfterResult(compiled, state.openAccess, event.test),
      };
    }
    case 'repair-tried':
      return {
        ...state,
        observations: [...state.observations, event],
        openAccess: openAfterDrive(compiled, state.openAccess),
      };
    case 'access-opened':
      return { ...state, openAccess: openWithPrerequisites(model, state.openAccess, event.access) };
    case 'access-closed':
      return { ...state, openAccess: closeWithDependents(model, state.openAccess, event.access) };
    case 'equipment-set':
      return { ...state, equipment: event.equipment };
    case 'prices-set':
      return { ...state, prices: event.prices };
    case 'note-added':
      return { ...state, notes: [...state.notes, event.text] };
    case 'title-set':
      return { ...state, title: event.title };
  }
}
