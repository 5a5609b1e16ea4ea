import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Model } from '../model/model.ts';
import type { Context } from '../evidence/facts.ts';
import { fulfils } from '../evidence/fulfils.ts';

/** P(hypothesis | intake facts), in the compiled order. A single cause: its weight times the capped product of context multipliers,
 * normalised; 0 when its required intake fact is not stated or a definitional multiplier excludes it. Pairs, when compiled for them,
 * share the model's share of two-cause faults in proportion to the product of their members' probabilities. */
export function contextPrior({ model, structure: { hypotheses } }: CompiledModel, context: Context): Float64Array {
  const single = normalised(singleWeights(model, context));
  if (hypotheses.length === single.length) return single;
  const share = model.twoCauseShare?.best ?? 0;
  const pairs = normalised(
    Float64Array.from(hypotheses, ({ members: [a, b] }) => (b === undefined ? 0 : single[a!]! * single[b]!)),
  );
  return pairs.map((p, at) => (at < single.length ? (1 - share) * single[at]! : share * p));
}

function singleWeights(model: Model, context: Context): Float64Array {
  const { low, high } = model.contextCap;
  const values = Object.entries(context).map(([feature, value]) =>
    model.context.find((f) => f.id === feature)?.values.find((v) => v.id === value),
  );
  return Float64Array.from(model.causes, ({ id, requires, weight }) => {
    let product = 1;
    let excluded = requires !== undefined && !fulfils(context, requires);
    for (const value of values) {
      const multiplier = value?.multipliers[id];
      if (multiplier === undefined) continue;
      if (multiplier.definitional === true && multiplier.best === 0) excluded = true;
      else product *= multiplier.best;
    }
    return excluded ? 0 : weight.best * Math.min(high, Math.max(low, product));
  });
}

/** Divided by their sum; all 0 when that is 0. */
function normalised(weights: Float64Array): Float64Array {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total > 0 ? weights.map((weight) => weight / total) : weights;
}
