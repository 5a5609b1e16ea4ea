import * as z from 'zod/mini';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Circumstances } from './circumstances.ts';
import { pricesSchema } from './pricesSchema.ts';

const ids = z.optional(z.array(z.string()));
const schema = z.object({ prices: z.optional(pricesSchema), equipment: ids, openAccess: ids });

/** Looks at circumstances once, where they come in.
 * @throws EvidenceError with everything that is wrong: `equipment-unknown`, `access-unknown`, prices that are no prices */
export function checkCircumstances({ model }: CompiledModel, circumstances: Circumstances): void {
  const checked = schema.safeParse(circumstances);
  const problems = checked.success ? findUnknown(model, circumstances) : problemsOfSchema(checked.error, circumstances);
  if (atLeastOne(problems)) throw new EvidenceError(problems);
}

function findUnknown(model: CompiledModel['model'], { equipment = [], openAccess = [] }: Circumstances) {
  return [
    ...equipment.flatMap((id, at) => findUnknownId('equipment', id, model.equipment, `/equipment/${at}`)),
    ...openAccess.flatMap((id, at) => findUnknownId('access', id, model.access, `/openAccess/${at}`)),
  ];
}
