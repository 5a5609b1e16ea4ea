import { atLeastOne } from '../errors/atLeastOne.ts';
import { ModelError } from '../errors/modelError.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import { findModelProblems } from './findModelProblems.ts';
import type { Model } from './model.ts';
import { modelSchema } from './modelSchema.ts';

/** Checks untrusted data to be a model: shape, rows, references, sources, cycles, causes that nothing finds or cures.
 * @throws ModelError with every problem found, each with its JSON Pointer, code and hint.
 * @example parseModel(JSON.parse(JSON.stringify(pump.model))).id // 'pump' */
export function parseModel(input: unknown): Model {
  const checked = modelSchema.safeParse(input);
  if (!checked.success) {
    const problems = problemsOfSchema(checked.error, input);
    if (atLeastOne(problems)) throw new ModelError(problems);
  }
  const model = checked.data as Model;
  const problems = findModelProblems(model);
  if (atLeastOne(problems)) throw new ModelError(problems);
  return model;
}
