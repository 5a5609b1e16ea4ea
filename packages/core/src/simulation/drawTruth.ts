import type { Facts } from '../evidence/facts.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import type { Random } from '../distributions/random.ts';
import { drawModel } from '../doubt/drawModel.ts';
import { recompileModel } from '../compiled/compileModel.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Truth } from './truth.ts';
import { makeTruthOfModel } from './makeTruthOfModel.ts';

/** A world as plausible as the model's own, its numbers drawn within their equivalent sample sizes (see `drawModel`): what may be true
 * while the model is believed.
 * @throws EvidenceError as `makeTruthOfModel` does.
 * @example drawTruth(compiled, facts, {}, createRandom(7), 'world-7').id // 'world-7' */
export function drawTruth(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  random: Random,
  id = 'drawn',
): Truth {
  return makeTruthOfModel(recompileModel(compiled, drawModel(compiled.model, random)), facts, circumstances, id);
}
