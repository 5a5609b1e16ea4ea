// The engine of a case: stated by an event, taken over by readings, kept in the file, undone like anything else.
import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { CaseError } from '../errors/caseError.ts';
import { FaultoddsError } from '../errors/faultoddsError.ts';
import { ReadingError } from '../errors/readingError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { modelIdentity } from '../model/modelIdentity.ts';
import { parseModel } from '../model/parseModel.ts';
import { parseReading } from '../reading/parseReading.ts';
import type { CaseEvent } from './caseEvent.ts';
import { engineOf } from './engineOf.ts';
import { factsOf } from './factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { recordEvent } from './recordEvent.ts';
import { saveCase } from '../caseFile/saveCase.ts';
import { caseState, type Session } from './session.ts';
import { startCase } from './startCase.ts';
import { redo, undo } from './undo.ts';

const compiled = compileModel(parseModel(misfire));
const fresh = deepFreeze(startCase({ id: 'case-1', title: 'Invented' }));
const record = (session: Session, event: unknown): Session =>
  deepFreeze(recordEvent(compiled, session, deepFreeze(event) as CaseEvent));
const four = { kind: 'engine-set', cylinders: 4, suspect: 3 } as const;
const read = (suspect: number, values: Record<string, number>): CaseEvent => ({
  kind: 'result-recorded',
  id: 'r1',
  test: 'cranking-compression',
  reading: { kind: 'per-cylinder', measure: 'pressure', unit: 'bar', suspect, values },
});
const bars = { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 };

function refusal(act: () => unknown): FaultoddsError {
  try {
    act();
  } catch (error) {
    if (error instanceof FaultoddsError) return error;
    throw error;
  }
  return expect.fail('it was accepted');
}

describe('an engine that is stated', () => {
  test('is in the state, replaced by the next one, and moves no belief', () => {
    const stated = record(fresh, four);
    expect(caseState(stated).engine).toEqual({ cylinders: 4, suspect: 3 });
    expect(factsOf(caseState(stated))).toEqual(factsOf(caseState(fresh)));
    const again = record(stated, { kind: 'engine-set', cylinders: 6, suspect: 5, bank: 2 });
    expect(caseState(again).engine).toEqual({ cylinders: 6, suspect: 5, bank: 2 });
  });

  test('is taken back and brought back', () => {
    const stated = record(fresh, four);
    expect(caseState(undo(stated)).engine).toBeUndefined();
    expect(caseState(redo(undo(stated))).engine).toEqual({ cylinders: 4, suspect: 3 });
  });

  test('is saved and loaded', () => {
    const saved: unknown = JSON.parse(JSON.stringify(saveCase(compiled, record(fresh, { ...four, bank: 1 }))));
    expect(saved).toMatchObject({ version: 3, events: [{ ...four, bank: 1 }] });
    expect(caseState(loadCase(compiled, saved)).engine).toEqual({ cylinders: 4, suspect: 3, bank: 1 });
  });

  test.each([
    [{ ...four, suspect: 5 }, 'cylinder-unknown', '/suspect'],
    [{ ...four, suspect: 0 }, 'too-small', '/suspect'],
    [{ ...four, suspect: 2.5 }, 'type-wrong', '/suspect'],
    [{ ...four, cylinders: 1, suspect: 1 }, 'too-small', '/cylinders'],
    [{ ...four, cylinders: 13 }, 'too-big', '/cylinders'],
    [{ ...four, cylinders: '4' }, 'type-wrong', '/cylinders'],
    [{ kind: 'engine-set', cylinders: 4 }, 'value-missing', '/suspect'],
    [{ ...four, bank: 3 }, 'value-unknown', '/bank'],
    [{ ...four, firing: '1342' }, 'key-unknown', '/firing'],
  ])('%j is refused: %s at %s', (event, code, path) => {
    const error = refusal(() => record(fresh, event));
    expect(error).toBeInstanceOf(CaseError);
    expect(error.problems).toEqual([expect.objectContaining({ code, path, hint: expect.stringMatching(/./) })]);
  });
});

describe('readings of several cylinders', () => {
  test('take the suspect from the engine of the case', () => {
    const input = { kind: 'per-cylinder', unit: 'bar', values: bars };
    expect(parseReading(compiled, 'cranking-compression', input, { cylinders: 4, suspect: 3 })).toMatchObject({
      suspect: 3,
    });
    expect(refusal(() => parseReading(compiled, 'cranking-compression', input))).toMatchObject({ path: '/suspect' });
  });

  test.each([
    [{ suspect: 2, values: bars }, 'suspect-differs', '/suspect'],
    [{ values: { ...bars, 6: 12 } }, 'cylinder-unknown', '/values/6'],
  ])('that do not fit the engine are refused: %j', (part, code, path) => {
    const input = { kind: 'per-cylinder', unit: 'bar', ...part };
    const error = refusal(() => parseReading(compiled, 'cranking-compression', input, { cylinders: 4, suspect: 3 }));
    expect(error).toBeInstanceOf(ReadingError);
    expect(error.problems).toEqual([expect.objectContaining({ code, path })]);
    const recorded = refusal(() =>
      record(record(fresh, four), read('suspect' in part ? part.suspect : 3, part.values)),
    );
    expect(recorded.problems).toEqual([expect.objectContaining({ code, path: `/reading${path}` })]);
  });

  test('are checked in counts and temperatures too; a number alone fits every engine', () => {
    const engine = { cylinders: 3, suspect: 1 };
    const counts = { kind: 'counts', counts: { 1: 90, 2: 1, 4: 0 } };
    expect(refusal(() => parseReading(compiled, 'misfire-counters', counts, engine)).path).toBe('/counts/4');
    const ohms = { values: { 1: 12, 2: 12.1 }, unit: 'ohm', temperatures: { values: { 5: 20 }, unit: 'degC' } };
    const windings = { kind: 'per-cylinder', measure: 'resistance', ...ohms };
    expect(refusal(() => parseReading(compiled, 'injector-current', windings, engine)).path).toBe(
      '/temperatures/values/5',
    );
    const alone = { kind: 'single', value: 42, unit: '%' };
    expect(parseReading(compiled, 'leak-down', alone, engine)).toMatchObject({ value: 42 });
  });

  test('on record keep the engine from becoming another one until they are retracted', () => {
    const recorded = record(record(fresh, four), read(3, bars));
    for (const [event, path] of [
      [{ ...four, suspect: 2 }, '/suspect'],
      [{ ...four, cylinders: 3 }, '/cylinders'],
    ] as const) {
      const error = refusal(() => record(recorded, event));
      expect(error).toBeInstanceOf(CaseError);
      expect(error).toMatchObject({ code: 'engine-differs', path, hint: "retract 'r1' first" });
    }
    expect(caseState(record(recorded, { ...four, cylinders: 6 })).engine?.cylinders).toBe(6);
    const without = record(recorded, { kind: 'observation-retracted', id: 'r1' });
    expect(caseState(record(without, { ...four, suspect: 2 })).engine?.suspect).toBe(2);
  });
});

describe('where nothing is stated', () => {
  test('the latest reading of several cylinders tells suspect and cylinders', () => {
    expect(engineOf(caseState(fresh))).toBeUndefined();
    const recorded = record(fresh, read(3, bars));
    expect(engineOf(caseState(recorded))).toEqual({ cylinders: 4, suspect: 3 });
    expect(engineOf(caseState(record(recorded, { ...four, cylinders: 8 })))).toEqual({ cylinders: 8, suspect: 3 });
  });

  test('more cylinders than an engine of a case can have tell nothing', () => {
    expect(engineOf(caseState(record(fresh, read(3, { ...bars, 14: 12 }))))).toBeUndefined();
  });
});

test('a case of version 1 loads, with readings of different suspects as they were, and is saved as version 3', () => {
  const events = [read(3, bars), { ...read(2, bars), id: 'r2' }];
  const old = deepFreeze({ format: 'faultodds-case', version: 1, id: 'c1', title: 'Invented', events });
  const session = loadCase(compiled, old);
  expect(caseState(session).engine).toBeUndefined();
  expect(saveCase(compiled, session)).toEqual({ ...old, version: 3, model: modelIdentity(compiled.model) });
});
