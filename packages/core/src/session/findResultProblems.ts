import { appliesHere } from '../belief/appliesHere.ts';
import type { Context } from '../belief/facts.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from '../model/model.ts';
import type { ResultRecorded } from './caseEvent.ts';
import { findUnknownId } from './findUnknownId.ts';

/** What is wrong with a result: an unknown test or outcome, nothing said, a test that does not apply to this car. */
export function findResultProblems(model: Model, context: Context, event: ResultRecorded): Problem[] {
  const test = model.tests.find((one) => one.id === event.test);
  if (test === undefined) return findUnknownId('test', event.test, model.tests, '/test');
  if (!appliesHere(test, context)) {
    const needs = (test.appliesWhen ?? []).map((requirement) =>
      Object.entries(requirement)
        .map(([feature, value]) => `${feature}: ${value}`)
        .join(' and '),
    );
    return [
      {
        code: 'test-not-applicable',
        path: '/test',
        message: `'${test.id}' does not apply to this car`,
        hint: `it needs the intake fact ${needs.join(', or ')}`,
      },
    ];
  }
  const { outcome, likelihood } = event;
  if ((outcome === undefined) === (likelihood === undefined)) {
    const message = outcome === undefined ? 'neither an outcome nor a likelihood' : 'both an outcome and a likelihood';
    return [{ code: 'outcome-missing', path: '', message, hint: 'give exactly one of the two' }];
  }
  const of = ` of '${test.id}'`;
  if (outcome !== undefined) return findUnknownId('outcome', outcome, test.outcomes, '/outcome', of);
  const entries = Object.entries(likelihood ?? {});
  const unknown = entries.flatMap(([id]) => findUnknownId('outcome', id, test.outcomes, `/likelihood/${id}`, of));
  if (entries.some(([, weight]) => weight > 0)) return unknown;
  return [
    ...unknown,
    {
      code: 'likelihood-invalid',
      path: '/likelihood',
      message: 'no outcome has a likelihood above 0',
      hint: 'say how strongly what was seen speaks for each outcome, as in 3 to 1',
    },
  ];
}
