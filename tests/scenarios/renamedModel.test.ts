import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  caseState,
  circumstancesOf,
  compileModel,
  factsOf,
  loadCase,
  parseModel,
  beliefOf,
  type CompiledModel,
  type Renaming,
  type Session,
} from '@faultodds/core';
import { demoCases } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { filesUnder, root } from '../fixtures/filesUnder.ts';
import { compiled as before, model } from './misfireCases.ts';

// The misfire model as if everything a case can name had got another name. Words of the model that hold ids are its references, so every
// text that is exactly an id, and every key, is replaced.
const anew = (id: string): string => `${id}-anew`;
// a cause that shares its id with an outcome or a mechanism keeps it: the two could not be told apart here; 'not-listed' is fixed
const shared = new Set([
  'not-listed',
  ...model.tests.flatMap(({ outcomes }) => outcomes.map(({ id }) => id)),
  ...model.mechanisms.map(({ id }) => id),
]);
const ids = new Set([
  ...model.tests.map(({ id }) => id),
  ...model.causes.map(({ id }) => id).filter((id) => !shared.has(id)),
  ...model.repairs.map(({ id }) => id),
  ...model.context.map(({ id }) => id),
]);
const outcomesOf = new Map(model.tests.map(({ id, outcomes }) => [id, outcomes.map((one) => one.id)]));

/** Tests, causes, repairs and intake features under new names, and the first outcome of every test. */
function renamedModel(): unknown {
  const plain = JSON.parse(JSON.stringify(model)) as typeof model;
  const renameOutcome = (test: string, outcome: string): string =>
    outcomesOf.get(test)?.[0] === outcome ? anew(outcome) : outcome;
  const tests = plain.tests.map((one) => ({
    ...one,
    ...(one.persistsAs === undefined ? {} : { persistsAs: renameOutcome(one.id, one.persistsAs) }),
    outcomes: one.outcomes.map((outcome) => ({ ...outcome, id: renameOutcome(one.id, outcome.id) })),
    rows: one.rows.map((row) => ({
      ...row,
      p: Object.fromEntries(Object.entries(row.p).map(([id, p]) => [renameOutcome(one.id, id), p])),
    })),
    ...(one.asleep === undefined
      ? {}
      : {
          asleep: {
            ...one.asleep,
            p: Object.fromEntries(Object.entries(one.asleep.p).map(([id, p]) => [renameOutcome(one.id, id), p])),
          },
        }),
    ...(one.readings === undefined
      ? {}
      : {
          readings: one.readings.map((reading) => renameBands(reading, (id) => renameOutcome(one.id, id))),
        }),
  }));
  const repairs = plain.repairs.map((one) =>
    one.sameAs === undefined
      ? one
      : {
          ...one,
          sameAs: {
            test: one.sameAs.test,
            cured: renameOutcome(one.sameAs.test, one.sameAs.cured),
            notCured: renameOutcome(one.sameAs.test, one.sameAs.notCured),
          },
        },
  );
  const renamed: Renaming[] = [
    ...model.tests.flatMap(({ id, outcomes: [first] }): Renaming[] => [
      { was: { test: id }, is: { test: anew(id) } },
      { was: { test: id, outcome: first!.id }, is: { test: id, outcome: anew(first!.id) } },
    ]),
    ...[...model.causes].flatMap(({ id }): Renaming[] =>
      !ids.has(id) ? [] : [{ was: { cause: id }, is: { cause: anew(id) } }],
    ),
    ...model.repairs.map(({ id }): Renaming => ({ was: { repair: id }, is: { repair: anew(id) } })),
    ...model.context.map(({ id }): Renaming => ({ was: { feature: id }, is: { feature: anew(id) } })),
  ];
  return { ...(withNewIds({ ...plain, tests, repairs }) as object), contentVersion: 2, renamed };
}

/** Outcomes in readings: of a band, beyond a limit, by name of what a count can show. */
function renameBands<T>(reading: T, rename: (id: string) => string): T {
  const renameAll = (value: unknown): unknown => {
    if (typeof value === 'string') return rename(value);
    if (Array.isArray(value)) return value.map(renameAll);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, renameAll(one)]));
  };
  return JSON.parse(
    JSON.stringify(reading, (key, value: unknown) =>
      ['outcome', 'outcomes', 'beyond', 'patterns'].includes(key) ? renameAll(value) : value,
    ),
  ) as T;
}

function withNewIds(value: unknown): unknown {
  if (typeof value === 'string') return value.replace(/^[a-z0-9][a-z0-9_-]*/, (id) => (ids.has(id) ? anew(id) : id));
  if (Array.isArray(value)) return value.map(withNewIds);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [ids.has(key) ? anew(key) : key, withNewIds(one)]),
  );
}

const today = (cause: string): string => (ids.has(cause) ? anew(cause) : cause);
const after = compileModel(parseModel(renamedModel()));
const believed = (compiled: CompiledModel, session: Session): Readonly<Record<string, number>> =>
  beliefOf(compiled, factsOf(caseState(session))).posterior;

const kept = filesUnder('tests/fixtures/cases', '.json').filter((path) => /version-\d+/.test(path));
const documents = new Map<string, unknown>([
  ...demoCases.map((demo) => [(demo as { id: string }).id, demo] as const),
  ...kept.map((path) => [path, JSON.parse(readFileSync(join(root, path), 'utf8')) as unknown] as const),
]);

test('most causes have another name', () => {
  expect(model.causes.filter(({ id }) => ids.has(id)).length).toBeGreaterThan(25);
});

test('the names are others: without renamings not one demo case with a result would keep it', () => {
  const bare = compileModel({ ...after.model, renamed: [] });
  for (const demo of demoCases) expect(loadCase(bare, demo).notices.length).toBeGreaterThan(0);
});

describe('every case made before tests, outcomes, causes, repairs and intake features were renamed says the same after', () => {
  test.each([...documents.keys()])('%s', (name) => {
    const document = documents.get(name);
    const [then, now] = [loadCase(before, document), loadCase(after, document)];
    const lost = (session: Session): number => session.notices.filter(({ kind }) => kind !== 'model-differs').length;
    expect(lost(now)).toBe(lost(then));
    const beliefs = [believed(before, then), believed(after, now)] as const;
    for (const [cause, p] of Object.entries(beliefs[0])) {
      expect(beliefs[1][today(cause)], cause).toBeCloseTo(p, 12);
    }
    expect(now.content.state.observations).toHaveLength(then.content.state.observations.length);
    expect(circumstancesOf(after, caseState(now)).openAccess).toEqual(
      circumstancesOf(before, caseState(then)).openAccess,
    );
    if (then.demo !== undefined) expect(now.demo?.trueCause).toBe(today(then.demo.trueCause));
  });
});
