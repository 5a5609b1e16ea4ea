import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import type { Model, Test } from '../model/model.ts';
import { findReadingProblems } from '../reading/findReadingProblems.ts';
import { outcomesOfReading } from '../reading/outcomesOfReading.ts';
import type { Reading } from '../reading/reading.ts';
import { appliesHere } from './appliesHere.ts';
import type { Context } from './facts.ts';
import type { TestResult } from './observation.ts';

/** What is wrong with a result: an unknown test or outcome, nothing said, a reading that cannot be, a test that does not apply to this car.
 * @param path JSON Pointer of the result, `''` when it stands alone. */
export function findResultProblems(
  model: Model,
  context: Context,
  result: Pick<TestResult, 'test' | 'outcome' | 'likelihood' | 'reading'>,
  path = '',
): Problem[] {
  const test = model.tests.find((one) => one.id === result.test);
  if (test === undefined) return findUnknownId('test', result.test, model.tests, `${path}/test`);
  if (!appliesHere(test, context)) {
    const needs = (test.appliesWhen ?? []).map((requirement) =>
      Object.entries(requirement).map(([feature, value]) => `${feature}: ${value}`),
    );
    return [problemFor('test-not-applicable', `${path}/test`, { test: test.id, needs })];
  }
  const { outcome, likelihood, reading } = result;
  if (reading !== undefined) return readingProblems(test, reading, result, path);
  if ((outcome === undefined) === (likelihood === undefined)) {
    return [problemFor(outcome === undefined ? 'outcome-missing' : 'outcome-missing/both', path, {})];
  }
  const of = test.id;
  if (outcome !== undefined) return findUnknownId('outcome', outcome, test.outcomes, `${path}/outcome`, of);
  const entries = Object.entries(likelihood ?? {});
  const wrong = entries.flatMap(([id, weight]): Problem[] => {
    const at = `${path}/likelihood/${id}`;
    const unknown = findUnknownId('outcome', id, test.outcomes, at, of);
    if (unknown.length > 0 || (weight >= 0 && weight <= LARGEST_NUMBER)) return unknown;
    return [problemFor('likelihood-invalid', at, { value: weight, most: LARGEST_NUMBER })];
  });
  if (wrong.length > 0 || entries.some(([, weight]) => weight > 0)) return wrong;
  return [problemFor('likelihood-invalid/none', `${path}/likelihood`, {})];
}

function readingProblems(
  test: Test,
  reading: Reading,
  { outcome, likelihood }: Pick<TestResult, 'outcome' | 'likelihood'>,
  path: string,
): Problem[] {
  if (likelihood !== undefined) {
    return [problemFor('outcome-missing/reading', path, {})];
  }
  const found = findReadingProblems(test, reading, `${path}/reading`);
  if (found.length > 0 || outcome === undefined) return found;
  const unknown = findUnknownId('outcome', outcome, test.outcomes, `${path}/outcome`, test.id);
  if (unknown.length > 0) return unknown;
  const called = outcomesOfReading(test, reading);
  if (called.includes(outcome)) return [];
  return [problemFor('outcome-contradicts-reading', `${path}/outcome`, { outcome, called })];
}
