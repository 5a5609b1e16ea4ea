import { jsonPointer } from '../errors/jsonPointer.ts';
import { problemFor, type ProblemParts } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import { readingSchema } from '../reading/readingSchema.ts';

/** What is wrong with the shape of facts that came from outside the type checker (a worker, a link, plain JavaScript): a list where an
 * object belongs, a number for a name, no list of observations. Whether the ids exist is asked afterwards, of the model.
 * Linear in the size of the facts, and no deeper than their shape: what else they carry is not looked at. */
export function findFactsProblems(facts: unknown): Problem[] {
  if (!isRecord(facts)) return [wrong([], facts, 'facts')];
  const { context, observations } = facts;
  const contextProblems = isRecord(context)
    ? Object.entries(context).flatMap(([feature, value]) => needString(value, ['context', feature]))
    : [wrong(['context'], context, 'context')];
  const list = Array.isArray(observations)
    ? observations.flatMap((one: unknown, at) => observationProblems(one, ['observations', at]))
    : [wrong(['observations'], observations, 'list')];
  return [...contextProblems, ...list, ...(Array.isArray(observations) ? findTwins(observations) : [])];
}

/** Observations with the id of an earlier one: the same entry given twice would count twice. */
function findTwins(observations: readonly unknown[]): Problem[] {
  const taken = new Set<unknown>();
  return observations.flatMap((one, at): Problem[] => {
    const id = isRecord(one) ? one['id'] : undefined;
    if (typeof id !== 'string' || !taken.has(id)) {
      taken.add(id);
      return [];
    }
    return [problemFor('id-taken', `/observations/${at}/id`, { id })];
  });
}

function observationProblems(observation: unknown, path: readonly PropertyKey[]): Problem[] {
  if (!isRecord(observation)) return [wrong(path, observation, 'object')];
  const { kind, id, note } = observation;
  const common = [
    ...needString(id, [...path, 'id']),
    ...(note === undefined ? [] : needString(note, [...path, 'note'])),
  ];
  if (kind === 'repair-tried') {
    const { repair, cured } = observation;
    const ofCured = typeof cured === 'boolean' ? [] : [wrong([...path, 'cured'], cured, 'cured')];
    return [...common, ...needString(repair, [...path, 'repair']), ...ofCured];
  }
  if (kind === 'result') return [...common, ...resultProblems(observation, path)];
  return [wrong([...path, 'kind'], kind, 'kind'), ...common];
}

function resultProblems(result: Readonly<Record<string, unknown>>, path: readonly PropertyKey[]): Problem[] {
  const { test, outcome, likelihood, reading, faultActive } = result;
  const found = needString(test, [...path, 'test']);
  if (outcome !== undefined) found.push(...needString(outcome, [...path, 'outcome']));
  if (faultActive !== undefined && faultActive !== 'yes' && faultActive !== 'no' && faultActive !== 'unknown') {
    found.push(wrong([...path, 'faultActive'], faultActive, 'faultActive'));
  }
  if (likelihood !== undefined) {
    const at = [...path, 'likelihood'];
    if (!isRecord(likelihood)) found.push(wrong(at, likelihood, 'likelihood'));
    else {
      for (const [id, weight] of Object.entries(likelihood)) {
        if (typeof weight !== 'number') found.push(wrong([...at, id], weight, 'number'));
      }
    }
  }
  if (reading !== undefined) {
    const checked = readingSchema.safeParse(reading);
    if (!checked.success) {
      const at = jsonPointer([...path, 'reading']);
      found.push(
        ...problemsOfSchema(checked.error, reading).map((problem) => ({ ...problem, path: at + problem.path })),
      );
    }
  }
  return found;
}

function needString(value: unknown, path: readonly PropertyKey[]): Problem[] {
  return typeof value === 'string' ? [] : [wrong(path, value, 'string')];
}

type Expected = ProblemParts<'type-wrong/facts'>['expected'];

function wrong(path: readonly PropertyKey[], value: unknown, expected: Expected): Problem {
  const found = value === null ? 'null' : Array.isArray(value) ? 'list' : typeof value;
  return value === undefined
    ? problemFor('value-missing/facts', jsonPointer(path), { expected })
    : problemFor('type-wrong/facts', jsonPointer(path), { found, expected });
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
