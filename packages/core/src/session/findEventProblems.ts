import { appliesHere } from '../evidence/appliesHere.ts';
import type { Context } from '../evidence/facts.ts';
import { findResultProblems } from '../evidence/findResultProblems.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import { nearestId } from '../validation/nearestId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from '../model/model.ts';
import type { Engine } from '../reading/engine.ts';
import { findEngineProblems } from '../reading/findEngineProblems.ts';
import type { Reading } from '../reading/reading.ts';
import type { CaseEvent } from './caseEvent.ts';
import { observationIdOf } from './observationIdOf.ts';
import { observationIdsOf } from './observationIdsOf.ts';
import type { SessionContent } from './session.ts';

/** What keeps a well-formed event from being recorded after `content`: ids the model does not know, an observation id
 * already used, a retraction of nothing, a test that would not apply to this car, a reading of
 * another engine. Paths are relative to the event. @param taken the ids of `content`, for whom they are at hand. */
export function findEventProblems(
  model: Model,
  content: SessionContent,
  event: CaseEvent,
  taken: ReadonlySet<string> = observationIdsOf(content),
): Problem[] {
  const { state } = content;
  switch (event.kind) {
    case 'context-set': {
      const values = model.context.find((feature) => feature.id === event.feature)?.values;
      if (values === undefined) return findUnknownId('feature', event.feature, model.context, '/feature');
      const unknown = findUnknownId('value', event.value, values, '/value', event.feature);
      return unknown.length > 0
        ? unknown
        : findLostTests(model, content, { ...state.context, [event.feature]: event.value });
    }
    case 'context-cleared': {
      const unknown = findUnknownId('feature', event.feature, model.context, '/feature');
      const { [event.feature]: _cleared, ...context } = state.context;
      return unknown.length > 0 ? unknown : findLostTests(model, content, context);
    }
    case 'engine-set':
      return event.suspect > event.cylinders
        ? [problemFor('cylinder-unknown/engine', '/suspect', { cylinder: event.suspect, cylinders: event.cylinders })]
        : findOtherEngines(content, event);
    case 'result-recorded':
      return [
        ...findTakenId(taken, event.id),
        ...findResultProblems(model, state.context, event),
        ...onThisEngine(state.engine, event.reading),
      ];
    case 'repair-tried':
      return [...findTakenId(taken, event.id), ...findUnknownId('repair', event.repair, model.repairs, '/repair')];
    case 'observation-retracted':
      return findNothingToRetract(content, event.id);
    case 'access-opened':
    case 'access-closed':
      return findUnknownId('access', event.access, model.access, '/access');
    case 'equipment-set':
      return event.equipment.flatMap((id, at) => findUnknownId('equipment', id, model.equipment, `/equipment/${at}`));
    case 'prices-set':
    case 'note-added':
    case 'title-set':
      return [];
  }
}

function findTakenId(taken: ReadonlySet<string>, id: string): Problem[] {
  return taken.has(id) ? [problemFor('id-taken', '/id', { id })] : [];
}

function findNothingToRetract({ events, unplaced, state }: SessionContent, id: string): Problem[] {
  const retracted = new Set(events.flatMap((event) => (event.kind === 'observation-retracted' ? [event.id] : [])));
  const kept = unplaced.flatMap(({ event }) => observationIdOf(event) ?? []);
  const ids = [...state.observations.map((one) => one.id), ...kept.filter((one) => !retracted.has(one))];
  if (ids.includes(id)) return [];
  return [problemFor('observation-unknown/to-retract', '/id', { id, nearest: nearestId(id, ids) })];
}

function onThisEngine(engine: Engine | undefined, reading: Reading | undefined): Problem[] {
  return engine === undefined || reading === undefined ? [] : findEngineProblems(engine, reading, '/reading');
}

/** Results already recorded whose numbers were read on another engine than this. */
function findOtherEngines({ state }: SessionContent, engine: Engine): Problem[] {
  const { cylinders, suspect } = engine;
  return state.observations.flatMap((observation): Problem[] => {
    const reading = observation.kind === 'result' ? observation.reading : undefined;
    if (reading?.kind !== 'per-cylinder' && reading?.kind !== 'counts') return [];
    const [problem] = findEngineProblems(engine, reading);
    if (problem === undefined) return [];
    const { id } = observation;
    if (reading.suspect !== suspect) {
      return [problemFor('engine-differs/suspect', '/suspect', { observation: id, read: reading.suspect, suspect })];
    }
    const cylinder = problem.path.split('/').at(-1)!;
    return [problemFor('engine-differs/cylinders', '/cylinders', { observation: id, cylinder, cylinders })];
  });
}

/** Results already recorded whose test would not apply any more under another context. */
function findLostTests(model: Model, { state }: SessionContent, context: Context): Problem[] {
  return state.observations.flatMap((observation) => {
    if (observation.kind !== 'result') return [];
    const test = model.tests.find((one) => one.id === observation.test);
    if (test === undefined || appliesHere(test, context)) return [];
    return [problemFor('context-needed', '/feature', { observation: observation.id, test: test.id })];
  });
}
