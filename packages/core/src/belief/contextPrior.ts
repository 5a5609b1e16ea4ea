import type { CompiledModel } from '../model/compiledModel.ts';
import type { Context } from './facts.ts';
import { fulfils } from './fulfils.ts';

/** P(cause | intake facts), in the model's order of causes: weights times the capped product of context multipliers, normalised.
 * A cause whose required intake fact is not stated, or that a definitional multiplier excludes, is 0. */
export function contextPrior(compiled: CompiledModel, context: Context): Float64Array {
  const { model, causes } = compiled;
  const { low, high } = model.contextCap;
  const values = Object.entries(context).map(([feature, value]) =>
    model.context.find((f) => f.id === feature)?.values.find((v) => v.id === value),
  );
  const prior = new Float64Array(causes.length);
  let total = 0;
  model.causes.forEach((cause, at) => {
    let product = 1;
    let excluded = cause.requires !== undefined && !fulfils(context, cause.requires);
    for (const value of values) {
      const multiplier = value?.multipliers[cause.id];
      if (multiplier === undefined) continue;
      if (multiplier.definitional === true && multiplier.best === 0) excluded = true;
      else product *= multiplier.best;
    }
    prior[at] = excluded ? 0 : (compiled.weights[at] ?? 0) * Math.min(high, Math.max(low, product));
    total += prior[at];
  });
  return prior.map((weight) => weight / total);
}
