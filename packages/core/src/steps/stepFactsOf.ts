import type { Context } from '../evidence/facts.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { makeTariff } from '../cost/tariff.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { unknownId } from '../validation/findUnknownId.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { makeStepFacts } from './makeStepFacts.ts';
import type { Step } from './step.ts';
import type { StepFacts } from './stepFacts.ts';

/** What a step costs, how long it takes, what it opens and closes, and its cautions, given the access that is open now. A `repair` is meant
 * alone, a `proved-repair` with the drive that proves it.
 * @throws EvidenceError `test-unknown`, `repair-unknown`, `access-unknown`
 * @example
 * ```ts
 * const isOpen = { openAccess: ['engine-dress-off'] };
 * stepFactsOf(compiled, {}, isOpen, { kind: 'test', test: 'plug-swap' }).accessToOpen // ['coil-off', 'plug-out']
 * ``` */
export function stepFactsOf(
  compiled: CompiledModel,
  context: Context,
  circumstances: Circumstances,
  step: Step,
): StepFacts {
  const { model } = compiled;
  const need = (kind: 'test' | 'repair' | 'access', id: string, known: readonly { readonly id: string }[]): void => {
    const ids = known.map((one) => one.id);
    if (!ids.includes(id)) throw new EvidenceError([unknownId(kind, id, ids, `/${kind}`)]);
  };
  if (step.kind === 'test') need('test', step.test, model.tests);
  if ('repair' in step) need('repair', step.repair, model.repairs);
  if ('access' in step) need('access', step.access, model.access);
  const tariff = makeTariff(compiled, circumstances.prices ?? defaultPrices(model), context);
  return makeStepFacts(compiled, tariff)(step, accessBits(compiled, circumstances.openAccess ?? []));
}
