import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { sweepModel } from '../compiled/sweepModel.ts';
import { type EvidencePart, evidencePartOf, groupParts } from '../evidence/evidencePart.ts';
import { factorsOfGroup } from '../evidence/factorsOfGroup.ts';
import type { Facts } from '../evidence/facts.ts';
import { posteriorOf } from '../belief/posteriorOf.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { contentKey } from './contentKey.ts';

/** The posterior with each observation left out and all others kept, in the order of the observations.
 *
 * Runs of one question share their error, so leaving one out changes the likelihood of its whole group and nothing else. The groups are
 * halved again and again: everything outside a half is multiplied once for all groups in it, so a group is reached with all others
 * taken after log2(groups) steps instead of all of them. Then one sweep for every different thing recorded in it: results that are alike
 * leave the same behind.
 * @param facts checked, see `sweepFacts`. @param prior cause -> probability. @returns arrays by the compiled order of causes. */
export function posteriorsWithoutEach(
  compiled: CompiledModel,
  { context, observations }: Facts,
  prior: Float64Array,
): readonly Float64Array[] {
  const parts = observations.map((observation) => evidencePartOf(compiled, observation));
  const groups = [...groupParts(parts.flatMap((part) => part ?? [])).values()];
  const ask = (likelihoods: readonly LikelihoodFactor[]): Float64Array =>
    posteriorOf(prior, sweepModel(compiled, { likelihoods, targets: [] }).logEvidenceGivenRoot).posterior;
  const saidBy = new Map(parts.map((part, at) => [part, contentKey(observations[at]!)]));
  const without = new Map<EvidencePart, Float64Array>();
  const factors = groups.map((group) => factorsOfGroup(compiled, group, context));

  const visit = (low: number, high: number, outside: readonly LikelihoodFactor[]): void => {
    if (high - low > 1) {
      const middle = (low + high) >> 1;
      visit(low, middle, [...outside, ...factors.slice(middle, high).flat()]);
      visit(middle, high, [...outside, ...factors.slice(low, middle).flat()]);
      return;
    }
    const group = groups[low] ?? [];
    const alike = new Map<string, Float64Array>();
    for (const part of group) {
      const key = saidBy.get(part)!;
      const posterior =
        alike.get(key) ??
        ask([
          ...outside,
          ...factorsOfGroup(
            compiled,
            group.filter((other) => other !== part),
            context,
          ),
        ]);
      alike.set(key, posterior);
      without.set(part, posterior);
    }
  };
  visit(0, groups.length, []);
  const all = parts.includes(undefined) ? ask(factors.flat()) : prior; // what added nothing leaves everything
  return parts.map((part) => (part === undefined ? all : without.get(part)!));
}
