import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { CaseState } from './caseState.ts';

/** What a case says besides the evidence, for `advise`, with the model's defaults written out:
 * its own prices, and everything at hand, unless the case says otherwise.
 * @example
 * ```ts
 * const later = recordEvent(compiled, session, { kind: 'equipment-set', equipment: ['hand-tools', 'scan-tool'] });
 * circumstancesOf(compiled, caseState(later)).equipment // ['hand-tools', 'scan-tool']
 * ``` */
export function circumstancesOf({ model }: CompiledModel, state: CaseState): Required<Circumstances> {
  return {
    prices: state.prices ?? defaultPrices(model),
    equipment: state.equipment ?? model.equipment.map((one) => one.id),
    openAccess: state.openAccess,
  };
}
