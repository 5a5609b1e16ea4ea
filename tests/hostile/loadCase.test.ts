import {
  caseState,
  CaseError,
  compileModel,
  FaultoddsError,
  loadCase,
  parseModel,
  recordEvent,
  saveCase,
  startCase,
  type CaseEvent,
} from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { pumpModel } from '../fixtures/pumpModel.ts';
import { damages, nested, poisons, seed } from './damage.ts';
import { verdictOn } from './expectRefusal.ts';

const compiled = compileModel(parseModel(pumpModel()));
const events: CaseEvent[] = [
  { kind: 'context-set', feature: 'filter', value: 'fitted' },
  { kind: 'engine-set', cylinders: 6, suspect: 5, bank: 2 },
  { kind: 'result-recorded', id: 'r1', test: 'hum', outcome: 'silent', faultActive: 'yes', note: 'at noon' },
  { kind: 'result-recorded', id: 'r2', test: 'vacuum', likelihood: { strong: 1, weak: 4 } },
  { kind: 'repair-tried', id: 'r3', repair: 'fit-fuse', cured: false },
  { kind: 'access-opened', access: 'wheel-out' },
  { kind: 'access-closed', access: 'lid-off' },
  { kind: 'equipment-set', equipment: ['lamp'] },
  { kind: 'prices-set', prices: { currency: 'EUR', labourPerHour: 90, partsFactor: 1.2 } },
  { kind: 'note-added', text: 'It rained.' },
  { kind: 'title-set', title: 'The pump again' },
  { kind: 'observation-retracted', id: 'r1' },
];
const document = JSON.parse(
  JSON.stringify(
    saveCase(
      compiled,
      events.reduce(
        (session, event) => recordEvent(compiled, session, event),
        startCase({ id: 'c1', title: 'The pump' }),
      ),
    ),
  ),
) as { events: unknown[] };

test('the case as it was saved loads', () => {
  expect(verdictOn('whole', CaseError, () => loadCase(compiled, document))).toBe('accepted');
});

test.each(Object.keys(poisons))('a case that is %s is refused', (name) => {
  expect(verdictOn(name, CaseError, () => loadCase(compiled, poisons[name]!()))).toBe('refused');
});

test('a case damaged in over a thousand places is refused, or loads whole', () => {
  const all = damages(document, 1200, seed);
  const verdicts = all.map(({ what, value }) =>
    verdictOn(what, CaseError, () => {
      const session = loadCase(compiled, value);
      // what loads can be saved and loaded again
      const saved = JSON.stringify(saveCase(compiled, session));
      expect(JSON.stringify(caseState(loadCase(compiled, JSON.parse(saved))))).toBe(JSON.stringify(caseState(session)));
    }),
  );
  const refused = verdicts.filter((verdict) => verdict === 'refused').length;
  console.log(`case: ${refused} of ${all.length} damaged copies refused, seed ${seed}`);
  expect(refused).toBeGreaterThan(1100);
});

test('demo cases damaged in places are refused, or load', () => {
  const model = compileModel(parseModel(misfire));
  const verdicts = demoCases.flatMap((demo, at) =>
    damages(demo, 20, seed + at).map(({ what, value }) => verdictOn(what, CaseError, () => loadCase(model, value))),
  );
  expect(verdicts.filter((verdict) => verdict === 'refused').length).toBeGreaterThan(verdicts.length / 2);
});

test('a damaged event is refused and leaves the session as it was', () => {
  const session = startCase({ id: 'c1', title: 'The pump' });
  const before = JSON.stringify(session);
  for (const event of events.slice(0, 4)) {
    for (const { what, value } of damages(event, 60, seed)) {
      verdictOn(what, FaultoddsError, () => recordEvent(compiled, session, value as CaseEvent));
      expect(JSON.stringify(session)).toBe(before);
    }
  }
});

describe('each kind of damage has its code', () => {
  test.each([
    ['another program’s file', { ...document, format: 'pump-log' }, 'format-unknown', '/format'],
    ['a file from the future', { ...document, version: 99 }, 'version-unknown', '/version'],
    [
      'an own __proto__',
      JSON.parse(JSON.stringify(document).replace('"events"', '"__proto__": { "polluted": true }, "events"')),
      'key-unsafe',
      '/__proto__',
    ],
    [
      'an own __proto__ deep inside',
      { ...document, events: [JSON.parse('{ "kind": "note-added", "text": "a", "__proto__": { "polluted": 1 } }')] },
      'key-unsafe',
      '/events/0/__proto__',
    ],
    ['an event nobody knows', { ...document, events: [{ kind: 'engine-exploded' }] }, 'kind-unknown', '/events/0/kind'],
    ['a result twice', { ...document, events: [...document.events, document.events[2]] }, 'id-taken', '/events/12/id'],
    [
      'a retraction of nothing',
      { ...document, events: [{ kind: 'observation-retracted', id: 'r9' }] },
      'observation-unknown',
      '/events/0/id',
    ],
    [
      'a suspect beyond the engine',
      { ...document, events: [{ kind: 'engine-set', cylinders: 4, suspect: 6 }] },
      'cylinder-unknown',
      '/events/0/suspect',
    ],
    [
      'an engine of endless cylinders',
      { ...document, events: [{ kind: 'engine-set', cylinders: Infinity, suspect: 1 }] },
      'type-wrong',
      '/events/0/cylinders',
    ],
    [
      'an old file with an event nobody knows',
      { ...document, version: 1, events: [{ kind: 'engine-exploded' }] },
      'kind-unknown',
      '/events/0/kind',
    ],
    [
      'a price that is no number',
      {
        ...document,
        events: [{ kind: 'prices-set', prices: { currency: 'EUR', labourPerHour: NaN, partsFactor: 1 } }],
      },
      'type-wrong',
      '/events/0/prices/labourPerHour',
    ],
    [
      'more events than a case can have',
      { ...document, events: Array.from({ length: 2_001 }, () => ({ kind: 'note-added', text: 'a' })) },
      'too-big',
      '/events',
    ],
  ])('%s', (_, input, code, path) => {
    try {
      loadCase(compiled, input);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(CaseError);
      expect((error as CaseError).problems).toContainEqual(expect.objectContaining({ code, path }));
    }
  });
});

test('two thousand notes load; a million levels of nesting are refused', () => {
  const notes = Array.from({ length: 2_000 }, () => ({ kind: 'note-added', text: 'a' }));
  expect(caseState(loadCase(compiled, { ...document, events: notes })).notes.length).toBe(2_000);
  expect(
    verdictOn('a million deep', CaseError, () => loadCase(compiled, { ...document, events: nested(1_000_000) })),
  ).toBe('refused');
});

test('a case that holds itself is refused', () => {
  const ring: { events: unknown[] } & Record<string, unknown> = { ...document, events: [...document.events] };
  ring.events.push(ring);
  expect(verdictOn('a ring', CaseError, () => loadCase(compiled, ring))).toBe('refused');
});
