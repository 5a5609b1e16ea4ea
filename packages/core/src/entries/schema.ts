import * as z from 'zod/mini';
import { caseSchema } from '../session/caseSchema.ts';
import { modelPartSchema, modelSchema } from '../model/modelSchema.ts';

/** JSON Schema (2020-12) of an assembled model. What a schema cannot say (sums, references, cycles) `parseModel` checks.
 * @example JSON.stringify(modelJsonSchema()).includes('"const":"faultodds-model"') // true */
export function modelJsonSchema(): unknown {
  return z.toJSONSchema(modelSchema, { target: 'draft-2020-12' });
}

/** JSON Schema of one file of a model that is split into several.
 * @example JSON.stringify(modelPartJsonSchema()).includes('"const":"faultodds-model"') // true */
export function modelPartJsonSchema(): unknown {
  return z.toJSONSchema(modelPartSchema, { target: 'draft-2020-12' });
}

/** JSON Schema of a saved case.
 * @example JSON.stringify(caseJsonSchema()).includes('"const":"faultodds-case"') // true */
export function caseJsonSchema(): unknown {
  return z.toJSONSchema(caseSchema, { target: 'draft-2020-12' });
}
