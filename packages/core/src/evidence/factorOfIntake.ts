import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel } from '../compiled/compiledModel.ts';

// The kernel knows a factor by its identity: the same answer gets the same object.
const madeFor = new WeakMap<CompiledModel, Map<string, LikelihoodFactor>>();

/** What takes an intake answer back: one over its multipliers, as a factor over the cause scaled to at most 1. None when the name is no
 * feature, or the answer says nothing. What it excludes stays excluded. */
export function factorOfIntake(
  compiled: CompiledModel,
  feature: string,
  value: string | undefined,
): readonly LikelihoodFactor[] {
  const { model, structure } = compiled;
  const { values = [] } = model.context.find(({ id }) => id === feature) ?? {};
  const multipliers = values.find(({ id }) => id === value)?.multipliers ?? {};
  if (Object.keys(multipliers).length === 0) return [];
  const made = madeFor.get(compiled) ?? new Map<string, LikelihoodFactor>();
  madeFor.set(compiled, made);
  const key = `${feature} ${value}`;
  const known = made.get(key);
  if (known !== undefined) return [known];
  const inverse = Float64Array.from(structure.hypotheses, ({ members }) =>
    members.reduce((product, at) => {
      const best = multipliers[model.causes[at]!.id]?.best ?? 1;
      return best === 0 ? product : product / best;
    }, 1),
  );
  const largest = inverse.reduce((a, b) => Math.max(a, b));
  const factor = { variables: ['cause'], values: inverse.map((x) => x / largest) };
  made.set(key, factor);
  return [factor];
}
