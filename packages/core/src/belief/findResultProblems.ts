import { findUnknownId } from '../errors/findUnknownId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
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
      Object.entries(requirement)
        .map(([feature, value]) => `${feature}: ${value}`)
        .join(' and '),
    );
    return [
      {
        code: 'test-not-applicable',
        path: `${path}/test`,
        message: `'${test.id}' does not apply to this car`,
        hint: `it needs the intake fact ${needs.join(', or ')}`,
      },
    ];
  }
  const { outcome, likelihood, reading } = result;
  if (reading !== undefined) return readingProblems(test, reading, result, path);
  if ((outcome === undefined) === (likelihood === undefined)) {
    const message =
      outcome === undefined ? 'neither an outcome nor a likelihood nor a reading' : 'both an outcome and a likelihood';
    return [{ code: 'outcome-missing', path, message, hint: 'give exactly one of them' }];
  }
  const of = ` of '${test.id}'`;
  if (outcome !== undefined) return findUnknownId('outcome', outcome, test.outcomes, `${path}/outcome`, of);
  const entries = Object.entries(likelihood ?? {});
  const wrong = entries.flatMap(([id, weight]): Problem[] => {
    const at = `${path}/likelihood/${id}`;
    const unknown = findUnknownId('outcome', id, test.outcomes, at, of);
    if (unknown.length > 0 || (weight >= 0 && weight < Infinity)) return unknown;
    const hint = 'relative likelihoods are finite and not negative';
    return [{ code: 'likelihood-invalid', path: at, message: `found ${weight}`, hint }];
  });
  if (wrong.length > 0 || entries.some(([, weight]) => weight > 0)) return wrong;
  return [
    {
      code: 'likelihood-invalid',
      path: `${path}/likelihood`,
      message: 'no outcome has a likelihood above 0',
      hint: 'say how strongly what was seen speaks for each outcome, as in 3 to 1',
    },
  ];
}

function readingProblems(
  test: Test,
  reading: Reading,
  { outcome, likelihood }: Pick<TestResult, 'outcome' | 'likelihood'>,
  path: string,
): Problem[] {
  if (likelihood !== undefined) {
    const message = 'both a reading and a likelihood';
    return [{ code: 'outcome-missing', path, message, hint: 'the likelihood follows from the reading: leave it out' }];
  }
  const found = findReadingProblems(test, reading, `${path}/reading`);
  if (found.length > 0 || outcome === undefined) return found;
  const unknown = findUnknownId('outcome', outcome, test.outcomes, `${path}/outcome`, ` of '${test.id}'`);
  if (unknown.length > 0) return unknown;
  const called = outcomesOfReading(test, reading);
  if (called.includes(outcome)) return [];
  return [
    {
      code: 'outcome-contradicts-reading',
      path: `${path}/outcome`,
      message: `the number is not called '${outcome}'${called.length > 0 ? ` but ${called.join(' or ')}` : ''}`,
      hint: 'leave the outcome out, or correct the number',
    },
  ];
}
