import { findUnknownId } from '../errors/findUnknownId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemsOfSchema } from '../errors/problemsOfSchema.ts';
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
    const hint = `give an outcome: ${test.outcomes.map(({ id }) => id).join(', ')}`;
    return [{ code: 'reading-not-possible', path, message: `'${test.id}' has no numeric reading`, hint }];
  }
  const checked = readingSchema.safeParse(input);
  if (!checked.success) {
    return problemsOfSchema(checked.error, input).map((problem) => ({ ...problem, path: path + problem.path }));
  }
  const reading = checked.data as Reading;
  const model = models.find(({ id }) => id === reading.measure);
  if (model === undefined) {
    return findUnknownId('measure', reading.measure, models, `${path}/measure`, ` of '${test.id}'`);
  }
  const kinds = kindsOf(model);
  if (!kinds.includes(reading.kind)) {
    const message = `'${model.id}' of '${test.id}' is not read as '${reading.kind}'`;
    return [{ code: 'kind-unfit', path: `${path}/kind`, message, hint: `give it as ${kinds.join(' or ')}` }];
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
