import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Model } from '../model/model.ts';
import { modelIdentity } from '../model/modelIdentity.ts';
import { parseModel } from '../model/parseModel.ts';
import type { Renaming } from '../model/renaming.ts';
import { circumstancesOf } from '../session/circumstancesOf.ts';
import type { CaseEvent } from '../session/caseEvent.ts';
import { factsOf } from '../session/factsOf.ts';
import { loadCase } from './loadCase.ts';
import { nextObservationId } from '../session/nextObservationId.ts';
import { recordEvent } from '../session/recordEvent.ts';
import { saveCase } from './saveCase.ts';
import { caseState, type Session } from '../session/session.ts';
import { undo } from '../session/undo.ts';

const pump = compileModel(parseModel(pumpModel()));
const identity = modelIdentity(pump.model);

/** The pump model of the next version. */
const later = (renamed: readonly Renaming[], change: Partial<Model> = {}): CompiledModel =>
  compileModel(parseModel({ ...pumpModel(), contentVersion: 2, ...change, renamed }));
const caseOf = (...events: unknown[]) =>
  deepFreeze({ format: 'faultodds-case', version: 3, id: 'c1', title: 'Invented', model: identity, events });
const load = (compiled: CompiledModel, ...events: unknown[]): Session => loadCase(compiled, caseOf(...events));
const result = (id: string, test: string, outcome: string) => ({ kind: 'result-recorded', id, test, outcome });
const again = (compiled: CompiledModel, session: Session): Session =>
  loadCase(compiled, JSON.parse(JSON.stringify(saveCase(compiled, session))));
const told = ({ notices }: Session): string[] =>
  notices.map((one) => (one.kind === 'event-unplaced' ? `${one.event.kind} ${one.problems[0]!.code}` : one.kind));
const beliefOfSession = (compiled: CompiledModel, session: Session) =>
  beliefOf(compiled, factsOf(caseState(session))).posterior;

describe('a case made with an earlier version counts in the names of today', () => {
  const compiled = later([
    { was: { test: 'noise' }, is: { test: 'hum' } },
    { was: { test: 'noise', outcome: 'loud' }, is: { test: 'hum', outcome: 'hums' } },
    { was: { test: 'suction' }, is: { test: 'vacuum' } },
    { was: { repair: 'swap-fuse' }, is: { repair: 'fit-fuse' } },
    { was: { feature: 'sieve' }, is: { feature: 'filter' } },
    { was: { feature: 'sieve', value: 'there' }, is: { feature: 'filter', value: 'fitted' } },
    { was: { access: 'cover-off' }, is: { access: 'lid-off' } },
    { was: { equipment: 'torch' }, is: { equipment: 'lamp' } },
    { was: { cause: 'blocked' }, is: { cause: 'clogged' } },
    { was: { model: 'garden-pump' }, is: { model: 'pump' } },
  ]);
  const events = [
    { kind: 'context-set', feature: 'sieve', value: 'there' },
    { kind: 'access-opened', access: 'cover-off' },
    { kind: 'equipment-set', equipment: ['torch', 'lamp'] },
    result('r1', 'noise', 'loud'),
    { kind: 'result-recorded', id: 'r2', test: 'suction', likelihood: { weak: 3, strong: 1 }, note: 'cold' },
    { kind: 'repair-tried', id: 'r3', repair: 'swap-fuse', cured: false },
    result('r4', 'filter-look', 'dirty'),
  ];
  const today: CaseEvent[] = [
    { kind: 'context-set', feature: 'filter', value: 'fitted' },
    { kind: 'access-opened', access: 'lid-off' },
    { kind: 'equipment-set', equipment: ['lamp'] },
    { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'hums' },
    { kind: 'result-recorded', id: 'r2', test: 'vacuum', likelihood: { weak: 3, strong: 1 }, note: 'cold' },
    { kind: 'repair-tried', id: 'r3', repair: 'fit-fuse', cured: false },
    { kind: 'result-recorded', id: 'r4', test: 'filter-look', outcome: 'dirty' },
  ];
  const old = {
    ...caseOf(...events),
    model: { ...identity, id: 'garden-pump' },
    demo: { invented: true, trueCause: 'blocked', lesson: 'Look.' },
  };

  test('every kind of name', () => {
    const session = loadCase(compiled, deepFreeze(old));
    expect(session.content).toMatchObject({ events: today, unplaced: [] });
    expect(session.demo?.trueCause).toBe('clogged');
    expect(session.notices).toEqual([{ kind: 'model-differs', made: old.model, here: modelIdentity(compiled.model) }]);
  });

  test('saved, it is a case of today', () => {
    const saved = saveCase(compiled, loadCase(compiled, old));
    expect(saved).toMatchObject({ model: modelIdentity(compiled.model), events: today });
    expect(loadCase(compiled, saved).notices).toEqual([]);
  });

  test('one that names no model is taken for one of this model', () => {
    const { model: _, ...unnamed } = old;
    const session = loadCase(compiled, unnamed);
    expect([session.content.events, session.notices]).toEqual([today, []]);
  });
});

test('a case of another model is refused, and both are named', () => {
  const made = { id: 'boiler', version: 4, hash: '0123456789abcdef' };
  expect(() => loadCase(pump, { ...caseOf(), model: made })).toThrow(
    expect.objectContaining({
      code: 'model-other',
      path: '/model/id',
      message: expect.stringMatching(/'boiler', version 4.*'pump', version 1/),
    }),
  );
});

describe('what was split', () => {
  test('an outcome that became two is one of the two', () => {
    const compiled = later([
      { was: { test: 'sound' }, is: { test: 'hum' } },
      { was: { test: 'sound', outcome: 'any' }, is: { test: 'hum', outcomes: ['hums', 'silent'] } },
    ]);
    const session = load(compiled, result('r1', 'sound', 'any'));
    expect(session.content.events).toEqual([
      { kind: 'result-recorded', id: 'r1', test: 'hum', likelihood: { hums: 1, silent: 1 } },
    ]);
    // "one of all there are" says nothing
    const [nothing, something] = [load(compiled), session].map((one) => beliefOfSession(compiled, one));
    for (const [cause, p] of Object.entries(nothing!)) expect(something![cause]).toBeCloseTo(p, 12);
  });

  test('a test that became two goes by its outcomes; results between them have no place', () => {
    const compiled = later([
      { was: { test: 'look' } },
      { was: { test: 'look', outcome: 'dirty' }, is: { test: 'wheel-look', outcome: 'dirty' } },
      { was: { test: 'look', outcome: 'blown' }, is: { test: 'fuse-look', outcome: 'blown' } },
    ]);
    const between = { kind: 'result-recorded', id: 'r3', test: 'look', likelihood: { dirty: 3, blown: 1 } };
    const session = load(
      compiled,
      result('r1', 'look', 'dirty'),
      result('r2', 'look', 'blown'),
      between,
      result('r4', 'look', 'clean'),
    );
    expect(session.content.events).toEqual([result('r1', 'wheel-look', 'dirty'), result('r2', 'fuse-look', 'blown')]);
    expect(told(session)).toEqual(['model-differs', 'result-recorded test-unknown', 'result-recorded test-unknown']);
    expect(session.content.unplaced.map(({ event }) => event)).toEqual([between, result('r4', 'look', 'clean')]);
  });

  test('two outcomes told apart that are one now have no place; not told apart they have', () => {
    const both = (id: string): Renaming => ({
      was: { test: 'hum', outcome: id },
      is: { test: 'hum', outcome: 'hums' },
    });
    const compiled = later([both('soft'), both('loud')]);
    const shares = (soft: number) => ({
      kind: 'result-recorded',
      id: 'r1',
      test: 'hum',
      likelihood: { soft, loud: 1 },
    });
    expect(told(load(compiled, shares(3)))).toEqual(['model-differs', 'result-recorded outcome-unknown']);
    expect(load(compiled, shares(1)).content.events).toEqual([
      { kind: 'result-recorded', id: 'r1', test: 'hum', likelihood: { hums: 1 } },
    ]);
  });

  test('of a feature that became two, the last answer alone stands', () => {
    const compiled = later([
      { was: { feature: 'inlet' } },
      { was: { feature: 'inlet', value: 'hose' }, is: { feature: 'suction-hose', value: 'fitted' } },
      { was: { feature: 'inlet', value: 'filter' }, is: { feature: 'filter', value: 'fitted' } },
    ]);
    const set = (value: string) => ({ kind: 'context-set', feature: 'inlet', value });
    const cleared = { kind: 'context-cleared', feature: 'inlet' };
    const contextAfter = (...events: unknown[]) => caseState(load(compiled, ...events)).context;
    expect(contextAfter(set('hose'), set('filter'))).toEqual({ filter: 'fitted' });
    expect(contextAfter(set('hose'), cleared)).toEqual({});
    const lost = load(compiled, set('hose'), set('both'));
    expect(caseState(lost).context).toEqual({});
    expect(told(lost)).toEqual(['model-differs', 'context-set feature-unknown']);
    expect(told(load(compiled, set('both'), set('hose')))).toEqual(['model-differs']);
  });
});

describe('what has no place', () => {
  const gone = later([], { equipment: pumpModel().equipment });
  const events = [
    result('r1', 'hum', 'silent'),
    result('r2', 'tap', 'hollow'),
    { kind: 'equipment-set', equipment: ['lamp', 'stethoscope'] },
    { kind: 'context-set', feature: 'weather', value: 'wet' },
    { kind: 'access-opened', access: 'roof-off' },
    { kind: 'repair-tried', id: 'r3', repair: 'kick-it', cured: false },
  ];
  const session = load(gone, ...events);

  test('does not count, is told and keeps its word', () => {
    expect(beliefOfSession(gone, session)).toEqual(beliefOfSession(gone, load(gone, events[0])));
    expect(told(session)).toEqual([
      'model-differs',
      'result-recorded test-unknown',
      'equipment-set equipment-unknown',
      'context-set feature-unknown',
      'access-opened access-unknown',
      'repair-tried repair-unknown',
    ]);
    expect(session.content.unplaced.map(({ event }) => event)).toEqual(events.slice(1));
  });

  test('equipment counts as far as it is known', () => {
    expect(circumstancesOf(gone, caseState(session)).equipment).toEqual(['lamp']);
  });

  test('is saved again and again, and grows no longer', () => {
    const once = saveCase(gone, session);
    const twice = saveCase(gone, again(gone, session));
    expect(twice).toEqual(once);
    expect(told(again(gone, session))).toEqual(told(session).slice(1));
  });

  test('takes its place in a model that has one for it', () => {
    const whole = later([
      { was: { test: 'tap' }, is: { test: 'hum' } },
      { was: { test: 'tap', outcome: 'hollow' }, is: { test: 'hum', outcome: 'silent' } },
      { was: { equipment: 'stethoscope' }, is: { equipment: 'gauge' } },
      { was: { feature: 'weather', value: 'wet' }, is: { feature: 'filter', value: 'fitted' } },
      { was: { access: 'roof-off' }, is: { access: 'lid-off' } },
      { was: { repair: 'kick-it' }, is: { repair: 'fit-fuse' } },
    ]);
    const home = loadCase(whole, saveCase(gone, session));
    expect(told(home)).toEqual(['model-differs']);
    expect(home.content.unplaced).toEqual([]);
    expect(caseState(home)).toEqual(caseState(load(whole, ...events)));
    expect(caseState(home)).toMatchObject({ equipment: ['lamp', 'gauge'], context: { filter: 'fitted' } });
  });

  test('survives undo, keeps its id to itself, and can be taken back', () => {
    let left = session;
    for (let step = 0; step < 5; step += 1) left = undo(left);
    expect(left.content.events).toEqual([]);
    expect(left.content.unplaced).toEqual(session.content.unplaced);
    expect(nextObservationId(left)).toBe('r1');
    expect(nextObservationId(session)).toBe('r4');
    expect(() => recordEvent(gone, left, result('r2', 'hum', 'hums') as CaseEvent)).toThrow(
      expect.objectContaining({ code: 'id-taken' }),
    );
    const back = recordEvent(gone, left, { kind: 'observation-retracted', id: 'r2' });
    expect(() => recordEvent(gone, back, { kind: 'observation-retracted', id: 'r2' })).toThrow(
      expect.objectContaining({ code: 'observation-unknown' }),
    );
    // taken back in front of where it stood, it must still load
    expect(told(again(gone, back))).not.toContain('result-recorded test-unknown');
  });

  test('a test that no longer applies to this car, a number that is no longer plausible', () => {
    const tests = pumpModel().tests.map((one) =>
      one.id === 'hum' ? { ...one, appliesWhen: [{ filter: 'fitted' }] } : one,
    );
    const stricter = later([], { tests });
    expect(told(load(stricter, result('r1', 'hum', 'hums')))).toEqual([
      'model-differs',
      'result-recorded test-not-applicable',
    ]);
  });
});
