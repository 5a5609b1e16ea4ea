import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel } from '../compiled/compiledModel.ts';

// The kernel knows a factor by its identity: the same answer, counted as much, gets the same object.
const madeFor = new WeakMap<CompiledModel, Map<string, LikelihoodFactor>>();

/** What an intake answer said, raised to an exponent, as a factor over the cause scaled to at most 1: with `exponent` -1 it is taken back.
 * None when it says nothing. What it excludes stays excluded. */
export function factorOfIntake(
  compiled: CompiledModel,
  feature: string,
  value: string,
  exponent: number,
): readonly LikelihoodFactor[] {
  const { model, structure } = compiled;
  const multipliers = model.context
    .find(({ id }) => id === feature)
    ?.values.find(({ id }) => id === value)?.multipliers;
  if (multipliers === undefined || exponent === 0) return [];
  const made = madeFor.get(compiled) ?? new Map<string, LikelihoodFactor>();
  madeFor.set(compiled, made);
  const key = `${feature} ${value} ${exponent}`;
  const known = made.get(key);
  if (known !== undefined) return [known];
  const odds = Float64Array.from(structure.hypotheses, ({ members }) =>
    members.reduce((product, at) => {
      const best = multipliers[model.causes[at]!.id]?.best ?? 1;
      return best === 0 ? product : product * best ** exponent;
    }, 1),
  );
  const largest = odds.reduce((a, b) => Math.max(a, b));
  const factor = { variables: ['cause'], values: odds.map((x) => x / largest) };
  made.set(key, factor);
  return [factor];
}
