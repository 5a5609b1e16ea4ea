import type { Facts } from '../belief/facts.ts';
import { updateBelief } from '../belief/updateBelief.ts';
import type { Circumstances } from '../decision/cost/circumstances.ts';
import type { DecisionProblem } from '../decision/problem/decisionProblem.ts';
import { problemOfCase } from '../decision/problem/problemOfCase.ts';
import type { Random } from '../distributions/random.ts';
import { drawModel } from '../doubt/drawModel.ts';
import { compileModel } from '../model/compileModel.ts';
import type { Model } from '../model/model.ts';

/** A decision problem as plausible as the model's own, its numbers drawn within their equivalent sample sizes (see `drawModel`): what the
 * world may be while the model is believed. */
export function drawTruth(model: Model, facts: Facts, circumstances: Circumstances, random: Random): DecisionProblem {
  const compiled = compileModel(drawModel(model, random));
  return problemOfCase(compiled, updateBelief(compiled, facts), circumstances);
}
