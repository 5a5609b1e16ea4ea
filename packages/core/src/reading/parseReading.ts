import { atLeastOne } from '../errors/atLeastOne.ts';
import { findUnknownId } from '../errors/findUnknownId.ts';
import { ReadingError } from '../errors/readingError.ts';
import type { CompiledModel } from '../model/compiledModel.ts';
import { findReadingProblems } from './findReadingProblems.ts';
import type { Reading } from './reading.ts';

/** A reading of a test as it was entered, checked: shape, quantity, unit, range, what is compared. `measure` may be left out where it is
 * the test's first (see `readings` of the test).
 * @throws ReadingError with all problems, each with the path of its field. Codes: `test-unknown`, `reading-not-possible`, `measure-unknown`,
 * `kind-unfit`, `unit-unknown`, `reading-implausible`, `suspect-missing`, `neighbour-missing`, `neighbour-zero`, `reference-zero`,
 * `partner-missing`, `partner-unfit`, `count-above-firings`, and those of the shape.
 * @example parseReading(compiled, 'cranking-compression', { kind: 'per-cylinder', unit: 'bar', suspect: 3, values: { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 } }) */
export function parseReading(compiled: CompiledModel, test: string, input: unknown): Reading {
  const known = compiled.model.tests.find(({ id }) => id === test);
  if (known === undefined) {
    const [problem] = findUnknownId('test', test, compiled.model.tests, '/test');
    throw new ReadingError([problem!]);
  }
  const complete = withMeasure(input, known.readings?.[0]?.id);
  const problems = findReadingProblems(known, complete);
  if (atLeastOne(problems)) throw new ReadingError(problems);
  return complete as Reading;
}

function withMeasure(input: unknown, first: string | undefined): unknown {
  if (typeof input !== 'object' || input === null || Array.isArray(input) || Object.hasOwn(input, 'measure'))
    return input;
  return { ...input, measure: first ?? 'none' };
}
