import { expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { CaseEvent } from './caseEvent.ts';
import { recordEvent } from './recordEvent.ts';
import { caseState, type Session } from './session.ts';
import { startCase } from './startCase.ts';
import { canRedo, canUndo, redo, undo } from './undo.ts';

const compiled = compileModel(parseModel(pumpModel()));
const events: CaseEvent[] = [
  { kind: 'context-set', feature: 'filter', value: 'fitted' },
  { kind: 'engine-set', cylinders: 4, suspect: 3 },
  { kind: 'result-recorded', id: 'r1', test: 'wheel-look', outcome: 'dirty' },
  { kind: 'result-recorded', id: 'r2', test: 'hum', outcome: 'hums' },
  { kind: 'observation-retracted', id: 'r1' },
  { kind: 'prices-set', prices: { currency: 'EUR', labourPerHour: 80, partsFactor: 1 } },
  { kind: 'title-set', title: 'Another' },
];

/** The session after none, one, two … of the events. */
const history = events.reduce<Session[]>(
  (sessions, event) => [...sessions, deepFreeze(recordEvent(compiled, sessions.at(-1)!, event))],
  [deepFreeze(startCase({ id: 'c', title: 't' }))],
);

test('undo goes back through every event, and redo forward again, to equal contents', () => {
  let session = history.at(-1)!;
  for (const earlier of history.slice(0, -1).toReversed()) {
    session = deepFreeze(undo(session));
    expect(session.content).toEqual(earlier.content);
  }
  expect(canUndo(session)).toBe(false);
  for (const later of history.slice(1)) {
    session = deepFreeze(redo(session));
    expect(session.content).toEqual(later.content);
  }
  expect(canRedo(session)).toBe(false);
});

test('undoing a retraction brings back the result and the access it had opened', () => {
  const state = caseState(undo(undo(undo(history.at(-1)!))));
  expect(state.observations.map(({ id }) => id)).toEqual(['r1', 'r2']);
  expect(state.openAccess).toEqual(['lid-off', 'wheel-out']);
});

test('with nothing to undo or redo the session itself comes back', () => {
  const [first] = history;
  expect(undo(first!)).toBe(first);
  expect(redo(first!)).toBe(first);
});

test('recording something new forgets what could be redone', () => {
  const session = recordEvent(compiled, undo(history.at(-1)!), { kind: 'note-added', text: 'n' });
  expect(canRedo(session)).toBe(false);
  expect(caseState(undo(session))).toEqual(history.at(-2)!.content.state);
});
