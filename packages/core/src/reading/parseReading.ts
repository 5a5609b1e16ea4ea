import { atLeastOne } from '../errors/atLeastOne.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import { ReadingError } from '../errors/readingError.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Engine } from './engine.ts';
import { findEngineProblems } from './findEngineProblems.ts';
import { findReadingProblems } from './findReadingProblems.ts';
import type { Reading } from './reading.ts';

/** A reading of a test as it was entered, checked: shape, quantity, unit, range, what is compared. `measure` may be left out where it is
 * the test's first (see `readings` of the test).
 * @param engine of the case: gives the suspect where the reading does not; the reading is checked against it.
 * @throws ReadingError with all problems, each with the path of its field. Codes: `test-unknown`, `reading-not-possible`,
 * `measure-unknown`, `kind-unfit`, `unit-unknown`, `reading-implausible`, `suspect-missing`, `neighbour-missing`, `neighbour-zero`,
 * `nominal-zero`, `reference-zero`, `partner-missing`, `partner-unfit`, `count-above-firings`, `suspect-differs`, `cylinder-unknown`, and
 * those of the shape.
 * @example parseReading(compiled, 'cranking-compression', { kind: 'per-cylinder', unit: 'bar', suspect: 3, values: { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 } }) */
export function parseReading(compiled: CompiledModel, test: string, input: unknown, engine?: Engine): Reading {
  const known = compiled.model.tests.find(({ id }) => id === test);
  if (known === undefined) {
    const [problem] = findUnknownId('test', test, compiled.model.tests, '/test');
    throw new ReadingError([problem!]);
  }
  const complete = withSuspect(withMeasure(input, known.readings?.[0]?.id), engine);
  const problems = findReadingProblems(known, complete);
  if (atLeastOne(problems)) throw new ReadingError(problems);
  const reading = complete as Reading;
  const unfit = engine === undefined ? [] : findEngineProblems(engine, reading);
  if (atLeastOne(unfit)) throw new ReadingError(unfit);
  return reading;
}

function withMeasure(input: unknown, first: string | undefined): unknown {
  if (typeof input !== 'object' || input === null || Array.isArray(input) || Object.hasOwn(input, 'measure'))
    return input;
  return { ...input, measure: first ?? 'none' };
}

function withSuspect(input: unknown, engine: Engine | undefined): unknown {
  if (engine === undefined || typeof input !== 'object' || input === null || Object.hasOwn(input, 'suspect'))
    return input;
  const { kind } = input as { readonly kind?: unknown };
  return kind === 'per-cylinder' || kind === 'counts' ? { ...input, suspect: engine.suspect } : input;
}
