import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { CaseError } from '../errors/caseError.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { FaultoddsError } from '../errors/faultoddsError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { CaseEvent } from './caseEvent.ts';
import { circumstancesOf } from './circumstancesOf.ts';
import { factsOf } from './factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { mostEvents } from './mostEvents.ts';
import { nextObservationId } from './nextObservationId.ts';
import { recordEvent } from './recordEvent.ts';
import { saveCase } from '../caseFile/saveCase.ts';
import { caseState, type Session } from './session.ts';
import { startCase } from './startCase.ts';

const compiled = compileModel(parseModel(pumpModel()));
const fresh = deepFreeze(startCase({ id: 'case-1', title: 'No water' }));

function after(...events: CaseEvent[]): Session {
  return events.reduce((session, event) => deepFreeze(recordEvent(compiled, session, deepFreeze(event))), fresh);
}

function refusal(session: Session, event: unknown): FaultoddsError {
  try {
    recordEvent(compiled, session, event as CaseEvent);
  } catch (error) {
    if (error instanceof FaultoddsError) return error;
    throw error;
  }
  return expect.fail('the event was accepted');
}

const hums: CaseEvent = { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'hums' };
const dirtyWheel: CaseEvent = { kind: 'result-recorded', id: 'r2', test: 'wheel-look', outcome: 'dirty' };

describe('the state after events', () => {
  test('intake answers are set, replaced and cleared', () => {
    const set = after(
      { kind: 'context-set', feature: 'filter', value: 'none' },
      { kind: 'context-set', feature: 'filter', value: 'fitted' },
      { kind: 'context-set', feature: 'suction-hose', value: 'none' },
    );
    expect(caseState(set).context).toEqual({ filter: 'fitted', 'suction-hose': 'none' });
    expect(caseState(recordEvent(compiled, set, { kind: 'context-cleared', feature: 'filter' })).context).toEqual({
      'suction-hose': 'none',
    });
  });

  test('results and tried repairs become observations in their order', () => {
    const state = caseState(
      after(
        { ...hums, faultActive: 'unknown', note: 'faint' } as CaseEvent,
        { kind: 'repair-tried', id: 'r2', repair: 'fit-fuse', cured: false },
        { kind: 'result-recorded', id: 'r3', test: 'vacuum', likelihood: { strong: 1, weak: 3 } },
      ),
    );
    expect(factsOf(state).observations).toEqual([
      { kind: 'result', id: 'r1', test: 'hum', outcome: 'hums', faultActive: 'unknown', note: 'faint' },
      { kind: 'repair-tried', id: 'r2', repair: 'fit-fuse', cured: false },
      { kind: 'result', id: 'r3', test: 'vacuum', likelihood: { strong: 1, weak: 3 } },
    ]);
  });

  test('a result opens the access of its test, prerequisites first; "nothing opened" is nothing to open', () => {
    expect(caseState(after(hums)).openAccess).toEqual([]);
    expect(caseState(after(hums, dirtyWheel)).openAccess).toEqual(['lid-off', 'wheel-out']);
  });

  test('closing something closes what stands on it and nothing else', () => {
    const open = after({ kind: 'access-opened', access: 'base-up' }, dirtyWheel);
    const closed = recordEvent(compiled, open, { kind: 'access-closed', access: 'lid-off' });
    expect(caseState(closed).openAccess).toEqual(['base-up']);
    const half = recordEvent(compiled, open, { kind: 'access-closed', access: 'wheel-out' });
    expect(caseState(half).openAccess).toEqual(['base-up', 'lid-off']);
  });

  test('a tried repair leaves access as it is', () => {
    const state = caseState(
      after(dirtyWheel, { kind: 'repair-tried', id: 'r3', repair: 'change-motor', cured: false }),
    );
    expect(state.openAccess).toEqual(['lid-off', 'wheel-out']);
  });

  test('title, notes, equipment and prices are kept', () => {
    const prices = { currency: 'EUR', labourPerHour: 80, partsFactor: 1.2 };
    const state = caseState(
      after(
        { kind: 'title-set', title: 'Pump by the pond' },
        { kind: 'note-added', text: 'was left out all winter' },
        { kind: 'equipment-set', equipment: ['lamp'] },
        { kind: 'prices-set', prices },
      ),
    );
    expect(state).toMatchObject({
      title: 'Pump by the pond',
      notes: ['was left out all winter'],
      equipment: ['lamp'],
      prices,
    });
    expect(circumstancesOf(compiled, state)).toEqual({ prices, equipment: ['lamp'], openAccess: [] });
  });

  test("without equipment and prices of its own a case has everything at hand at the model's prices", () => {
    expect(circumstancesOf(compiled, caseState(fresh))).toEqual({
      prices: { currency: 'unit', labourPerHour: 60, partsFactor: 1 },
      equipment: ['lamp', 'gauge'],
      openAccess: [],
    });
  });
});

describe('retraction', () => {
  const others: CaseEvent[] = [
    { kind: 'context-set', feature: 'filter', value: 'fitted' },
    hums,
    { kind: 'note-added', text: 'odd' },
    { kind: 'access-closed', access: 'wheel-out' },
    { kind: 'result-recorded', id: 'r3', test: 'filter-look', outcome: 'dirty' },
  ];

  test.each([0, 1, 2, 3, 4, 5])('gives exactly the state without the result, wherever it stood (position %i)', (at) => {
    const withIt = after(...others.toSpliced(at, 0, dirtyWheel), { kind: 'observation-retracted', id: 'r2' });
    expect(caseState(withIt)).toEqual(caseState(after(...others)));
  });

  test('access stays open only if another event opened it', () => {
    const lidByVacuum: CaseEvent = { kind: 'result-recorded', id: 'r9', test: 'vacuum', outcome: 'weak' };
    const session = after(dirtyWheel, lidByVacuum, { kind: 'observation-retracted', id: 'r2' });
    expect(caseState(session).openAccess).toEqual(['lid-off']);
  });

  test('a retracted id is not given out again', () => {
    const session = after(hums, { kind: 'observation-retracted', id: 'r1' });
    expect(nextObservationId(session)).toBe('r2');
    expect(refusal(session, hums)).toMatchObject({ code: 'id-taken', path: '/id' });
  });
});

describe('refusals', () => {
  test.each([
    [
      { kind: 'context-set', feature: 'filtre', value: 'none' },
      EvidenceError,
      'feature-unknown',
      '/feature',
      "'filter'",
    ],
    [{ kind: 'context-set', feature: 'filter', value: 'non' }, EvidenceError, 'value-unknown', '/value', "'none'"],
    [{ kind: 'context-cleared', feature: 'x' }, EvidenceError, 'feature-unknown', '/feature', ''],
    [{ ...hums, test: 'hmu' }, EvidenceError, 'test-unknown', '/test', "'hum'"],
    [{ ...hums, outcome: 'hum' }, EvidenceError, 'outcome-unknown', '/outcome', "'hums'"],
    [{ kind: 'result-recorded', id: 'r1', test: 'hum' }, EvidenceError, 'outcome-missing', '', 'exactly one'],
    [{ ...hums, likelihood: { hums: 1 } }, EvidenceError, 'outcome-missing', '', 'exactly one'],
    [
      { kind: 'result-recorded', id: 'r1', test: 'hum', likelihood: { hums: 0 } },
      EvidenceError,
      'likelihood-invalid',
      '/likelihood',
      '3 to 1',
    ],
    [
      { kind: 'result-recorded', id: 'r1', test: 'hum', likelihood: { loud: 1 } },
      EvidenceError,
      'outcome-unknown',
      '/likelihood/loud',
      '',
    ],
    [
      { kind: 'result-recorded', id: 'r1', test: 'filter-look', outcome: 'dirty' },
      EvidenceError,
      'test-not-applicable',
      '/test',
      'filter: fitted',
    ],
    [
      { kind: 'repair-tried', id: 'r1', repair: 'fit-fuze', cured: false },
      EvidenceError,
      'repair-unknown',
      '/repair',
      "'fit-fuse'",
    ],
    [{ kind: 'observation-retracted', id: 'r1' }, CaseError, 'observation-unknown', '/id', ''],
    [{ kind: 'access-opened', access: 'lid' }, CaseError, 'access-unknown', '/access', ''],
    [{ kind: 'access-closed', access: 'lidoff' }, CaseError, 'access-unknown', '/access', "'lid-off'"],
    [{ kind: 'equipment-set', equipment: ['lamp', 'gage'] }, CaseError, 'equipment-unknown', '/equipment/1', "'gauge'"],
    [
      { kind: 'prices-set', prices: { currency: 'EUR', labourPerHour: Number.NaN, partsFactor: 1 } },
      CaseError,
      'type-wrong',
      '/prices/labourPerHour',
      '',
    ],
    [
      { kind: 'prices-set', prices: { currency: 'EUR', labourPerHour: 1, partsFactor: 0 } },
      CaseError,
      'too-small',
      '/prices/partsFactor',
      '',
    ],
    [{ kind: 'explode' }, CaseError, 'kind-unknown', '/kind', ''],
    [{ ...hums, colour: 'red' }, CaseError, 'key-unknown', '/colour', ''],
    [null, CaseError, 'type-wrong', '', ''],
  ])('%j', (event, kind, code, path, hint) => {
    const error = refusal(fresh, event);
    expect(error).toBeInstanceOf(kind);
    expect(error).toMatchObject({ code, path });
    expect(error.hint).toContain(hint);
    expect(fresh.content.events).toEqual([]);
  });

  test('an intake fact that a recorded result needs cannot be taken away before the result', () => {
    const fitted: CaseEvent = { kind: 'context-set', feature: 'filter', value: 'fitted' };
    const session = after(fitted, { kind: 'result-recorded', id: 'r1', test: 'filter-look', outcome: 'clean' });
    expect(refusal(session, { kind: 'context-cleared', feature: 'filter' })).toMatchObject({ code: 'context-needed' });
    expect(refusal(session, { ...fitted, value: 'none' })).toMatchObject({ code: 'context-needed' });
    const retracted = recordEvent(compiled, session, { kind: 'observation-retracted', id: 'r1' });
    expect(caseState(recordEvent(compiled, retracted, { ...fitted, value: 'none' })).context).toEqual({
      filter: 'none',
    });
  });

  test('the event given stays the caller’s own: it is copied, not frozen', () => {
    const event = { kind: 'equipment-set' as const, equipment: ['lamp'] };
    recordEvent(compiled, fresh, event);
    event.equipment.push('gauge');
    expect(event.equipment).toEqual(['lamp', 'gauge']);
  });
});

test('a full case takes no more, so that what was recorded loads again', () => {
  const note = { kind: 'note-added', text: 'a' } as const;
  const events = Array.from({ length: mostEvents - 1 }, () => note);
  const almost = loadCase(compiled, { format: 'faultodds-case', version: 3, id: 'c', title: 'Full', events });
  const full = recordEvent(compiled, almost, note);
  expect(caseState(loadCase(compiled, saveCase(compiled, full))).notes).toHaveLength(mostEvents);
  expect(refusal(full, note).problems).toMatchObject([{ code: 'case-full', path: '' }]);
});
