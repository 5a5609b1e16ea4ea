import { findUnknownId } from '../validation/findUnknownId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemFor } from '../validation/problemFor.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import type { Test } from '../model/model.ts';
import type { MeasuredReading, PartCountsReading } from '../model/readingModel.ts';
import { findCountProblems, findPartCountProblems } from './findCountProblems.ts';
import { findMeasuredProblems } from './findMeasuredProblems.ts';
import { kindsOf } from './kindsOf.ts';
import type { Reading } from './reading.ts';
import { readingSchema } from './readingSchema.ts';

/** What is wrong with a reading of a test, each at its field: its shape, a quantity this test does not read, a kind that does not fit,
 * an unknown unit, a number that cannot be, no suspect, nothing to compare with.
 * @param path JSON Pointer of the reading, `''` when it stands alone. */
export function findReadingProblems(test: Test, input: unknown, path = ''): Problem[] {
  const models = test.readings ?? [];
  if (models.length === 0) {
    const outcomes = test.outcomes.map(({ id }) => id);
    return [problemFor('reading-not-possible', path, { test: test.id, outcomes })];
  }
  const checked = readingSchema.safeParse(input);
  if (!checked.success) {
    return problemsOfSchema(checked.error, input).map((problem) => ({ ...problem, path: path + problem.path }));
  }
  const reading = checked.data as Reading;
  const model = models.find(({ id }) => id === reading.measure);
  if (model === undefined) {
    return findUnknownId('measure', reading.measure, models, `${path}/measure`, test.id);
  }
  const kinds = kindsOf(model);
  if (!kinds.includes(reading.kind)) {
    const parts = { measure: model.id, test: test.id, kind: reading.kind, kinds };
    return [problemFor('kind-unfit', `${path}/kind`, parts)];
  }
  switch (reading.kind) {
    case 'counts':
      return findCountProblems(reading, path);
    case 'part-counts':
      return findPartCountProblems(model as PartCountsReading, reading, path);
    default:
      return findMeasuredProblems(model as MeasuredReading, reading, path);
  }
}
