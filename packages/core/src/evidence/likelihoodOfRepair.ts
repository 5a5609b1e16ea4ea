import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel } from '../compiled/compiledModel.ts';

// The kernel knows a factor by its identity: the same attempt at the same repair gets the same object, or everything after it is swept anew.
const madeFor = new WeakMap<CompiledModel, Map<string, LikelihoodFactor>>();

/** The likelihood of "repaired, and it stayed" or "repaired, and it went" as a factor over the cause. What the repair does not cure may go
 * all the same (the model's `goneWithoutCure`). */
export function likelihoodOfRepair(compiled: CompiledModel, repair: number, cured: boolean): LikelihoodFactor {
  const made = madeFor.get(compiled) ?? new Map<string, LikelihoodFactor>();
  madeFor.set(compiled, made);
  const key = `${repair} ${cured}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const gone = compiled.model.goneWithoutCure.best;
  const values = new Float64Array(compiled.causes.length).fill(cured ? gone : 1 - gone);
  for (const { cause, success } of compiled.cures[repair] ?? []) values[cause] = cured ? success : 1 - success;
  const factor = { variables: ['cause'], values };
  made.set(key, factor);
  return factor;
}
