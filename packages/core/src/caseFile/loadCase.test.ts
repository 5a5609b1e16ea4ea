import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { CaseError } from '../errors/caseError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { CaseEvent } from '../session/caseEvent.ts';
import { loadCase } from './loadCase.ts';
import { matchEvents } from './matchEvents.ts';
import { recordEvent } from '../session/recordEvent.ts';
import { saveCase } from './saveCase.ts';
import { startCase } from '../session/startCase.ts';
import { undo } from '../session/undo.ts';

const compiled = compileModel(parseModel(pumpModel()));
const events: CaseEvent[] = [
  { kind: 'context-set', feature: 'filter', value: 'fitted' },
  { kind: 'result-recorded', id: 'r1', test: 'wheel-look', likelihood: { dirty: 3, clean: 1 }, faultActive: 'no' },
  { kind: 'repair-tried', id: 'r2', repair: 'fit-fuse', cured: false, note: 'new fuse is whole' },
  { kind: 'observation-retracted', id: 'r1' },
  { kind: 'title-set', title: 'Later title' },
];
const demo = { invented: true as const, trueCause: 'clogged', lesson: 'Look before you buy.', testCost: 12 };
const session = events.reduce(
  (before, event) => recordEvent(compiled, before, event),
  startCase({ id: 'case-1', title: 'First title', demo }),
);
const saved = deepFreeze(saveCase(compiled, session));

function refusal(input: unknown): CaseError {
  try {
    loadCase(compiled, deepFreeze(input));
  } catch (error) {
    if (error instanceof CaseError) return error;
    throw error;
  }
  return expect.fail('the case was accepted');
}

test('a saved case loads to the same session, through JSON too', () => {
  expect(loadCase(compiled, saved)).toEqual(session);
  expect(saveCase(compiled, loadCase(compiled, JSON.parse(JSON.stringify(saved))))).toEqual(saved);
});

test('undo goes on behind the loading', () => {
  expect(undo(loadCase(compiled, saved)).content).toEqual(undo(session).content);
});

test('the schema address of a hand-written file is accepted and not kept', () => {
  expect(saveCase(compiled, loadCase(compiled, { $schema: '../case.schema.json', ...saved }))).toEqual(saved);
});

describe('what is not a case of this format is refused with one clear problem', () => {
  test.each([
    [undefined, 'type-wrong', ''],
    ['{}', 'type-wrong', ''],
    [[saved], 'type-wrong', ''],
    [{}, 'format-unknown', '/format'],
    [{ ...saved, format: 'something-else' }, 'format-unknown', '/format'],
    [{ ...saved, version: 0 }, 'version-unknown', '/version'],
    [{ ...saved, version: '1' }, 'version-unknown', '/version'],
    [{ format: saved.format }, 'version-unknown', '/version'],
  ])('%#', (input, code, path) => {
    const error = refusal(input);
    expect(error.problems).toHaveLength(1);
    expect(error).toMatchObject({ code, path });
  });

  test('a newer version is named, with what to do', () => {
    const error = refusal({ ...saved, version: 4, events: 'in a new shape' });
    expect(error).toMatchObject({ code: 'version-unknown', path: '/version' });
    expect(error.message).toContain('version 4');
    expect(error.hint).toContain('newer');
  });
});

test('all problems of the shape are reported, each with its place', () => {
  const error = refusal({
    ...saved,
    id: '../../etc',
    surprise: 1,
    demo: { invented: false, trueCause: 'clogged', lesson: '' },
    events: [
      { kind: 'nothing' },
      { kind: 'note-added', text: 5 },
      { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'hums', faultActive: 'maybe' },
    ],
  });
  expect(error.problems.map(({ path }) => path).toSorted()).toEqual([
    '/demo/invented',
    '/demo/lesson',
    '/events/0/kind',
    '/events/1/text',
    '/events/2/faultActive',
    '/id',
    '/surprise',
  ]);
  for (const { hint, message } of error.problems) expect(hint.length * message.length).toBeGreaterThan(0);
});

test('of a damaged case everything is reported that has no place, and nothing is half-loaded', () => {
  const error = refusal({
    ...saved,
    demo: { ...demo, trueCause: 'cloged' },
    events: [
      { kind: 'context-set', feature: 'filter', value: 'green' },
      { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'hums' },
      { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'silent' },
      { kind: 'observation-retracted', id: 'r7' },
    ],
  });
  expect(error.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'cause-unknown /demo/trueCause',
    'value-unknown /events/0/value',
    'id-taken /events/2/id',
    'observation-unknown /events/3/id',
  ]);
  expect(error.problems[0]!.hint).toBe("did you mean 'clogged'?");
});

describe('malicious input', () => {
  test.each([
    ['{"__proto__":{"polluted":1},"format":"faultodds-case","version":1}', '/__proto__'],
    [
      '{"format":"faultodds-case","version":1,"id":"a","title":"t","events":[{"kind":"note-added","text":"x","__proto__":{"polluted":1}}]}',
      '/events/0/__proto__',
    ],
    [
      '{"format":"faultodds-case","version":1,"id":"a","title":"t","events":[{"kind":"result-recorded","id":"r1","test":"hum","likelihood":{"__proto__":1,"hums":1}}]}',
      '/events/0/likelihood/__proto__',
    ],
  ])('%s', (json, path) => {
    expect(refusal(JSON.parse(json))).toMatchObject({ code: 'key-unsafe', path });
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test.each(['constructor', 'toString', '__proto__', 'hasOwnProperty'])(
    'no id falls through to Object.prototype: %s',
    (id) => {
      const unknown = (event: object): string[] => {
        try {
          return loadCase(compiled, { ...saved, events: [event] }).notices.map(({ kind }) => kind);
        } catch (error) {
          return (error as CaseError).problems.map(({ code }) => code);
        }
      };
      const refused = id === '__proto__' ? 'id-malformed' : 'event-unplaced';
      expect(unknown({ kind: 'context-set', feature: id, value: 'none' })).toEqual([refused]);
      expect(unknown({ kind: 'result-recorded', id: 'r1', test: id, outcome: 'x' })).toEqual([refused]);
      expect(unknown({ kind: 'result-recorded', id: 'r1', test: 'hum', outcome: id })).toEqual([refused]);
      expect(refusal({ ...saved, events: [{ kind: 'observation-retracted', id }] }).problems).toHaveLength(1);
    },
  );

  test('deep nesting is refused without exhausting the stack', () => {
    let deep: unknown = {};
    for (let depth = 0; depth < 50_000; depth += 1) deep = { deep };
    expect(() => loadCase(compiled, { ...saved, events: [deep] })).toThrow(CaseError);
  });

  test('too many events are refused', () => {
    const note = { kind: 'note-added', text: 'x' };
    expect(refusal({ ...saved, events: Array.from({ length: 10_001 }, () => note) })).toMatchObject({
      code: 'too-big',
      path: '/events',
    });
  });
});

test('replaying looks at an event a fixed number of times, however many there are', () => {
  /** Looks at the events of a case of so many remarks and then as many results. */
  const looks = (each: number): number => {
    let count = 0;
    const remarks = Array.from({ length: each }, (): CaseEvent => ({
      get kind() {
        count += 1;
        return 'note-added' as const;
      },
      text: 'n',
    }));
    const results = Array.from({ length: each }, (_, at): CaseEvent => ({
      kind: 'result-recorded',
      id: `r${at}`,
      test: 'hum',
      outcome: 'hums',
    }));
    const document = { ...saved, events: [...remarks, ...results] };
    const placed = matchEvents(compiled, startCase({ id: 'c', title: 't' }), document);
    expect(placed.session.content.events).toHaveLength(2 * each);
    return count / each;
  };
  // every result used to look through all events before it: 609 looks for each against 69
  expect(looks(200)).toBe(looks(20));
});
