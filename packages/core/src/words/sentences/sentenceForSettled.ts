import type { Model } from '../../model/model.ts';
import type { OtherStep, SettledAdvice } from '../../settling/settledAdvice.ts';
import type { NextStep } from '../../steps/nextStep.ts';
import type { Language } from '../languages/language.ts';
import { nameOf } from './nameOf.ts';

/** What looking several steps ahead makes of what one step says.
 * @example
 * ```ts
 * const intake = beliefOf(pump, { context: {}, observations: [] });
 * sentenceForSettled(pump.model, settleAdvice(pump, intake), english); // 'Several steps ahead too, this is the best step.'
 * ``` */
export function sentenceForSettled(
  model: Model,
  { best, oneStep, differs, saving }: Pick<SettledAdvice, 'best' | 'oneStep' | 'differs' | 'saving'>,
  language: Language,
): string {
  const { messages, formatMoney } = language;
  if (!differs) return messages.aheadAgrees();
  const name = (step: NextStep): string => stepName(model, step, language);
  return messages.aheadDiffers({ best: name(best), saving: formatMoney(saving), oneStep: name(oneStep) });
}

/** What was found after a step was settled on, as a line beside it. @param by what it saves against that step
 * @example
 * ```ts
 * const { best } = advise(pump, beliefOf(pump, { context: {}, observations: [] }));
 * sentenceForBetter(pump.model, { best, by: { amount: 12, currency: 'EUR' } }, english); // 'Now better by €12: “Look at the fuse”'
 * ``` */
export function sentenceForBetter(
  model: Model,
  { best, by }: { readonly best: NextStep; readonly by: SettledAdvice['saving'] },
  language: Language,
): string {
  return language.messages.nowBetter({ by: language.formatMoney(by), best: stepName(model, best, language) });
}

/** What beginning with another step costs more.
 * @example
 * ```ts
 * sentenceForOther({ more: { amount: 60, currency: 'EUR' }, isAboutTheSame: false }, english); // 'costs €60 more to begin with'
 * ``` */
export function sentenceForOther(
  { more, isAboutTheSame }: Pick<OtherStep, 'more' | 'isAboutTheSame'>,
  { messages, formatMoney }: Language,
): string {
  return isAboutTheSame ? messages.beginsAlike() : messages.beginsDearer({ more: formatMoney(more) });
}

function stepName({ tests, repairs }: Model, step: NextStep, language: Language): string {
  if (step.kind === 'refer') return language.messages.handingOn();
  return language.messages.quoted(
    step.kind === 'test' ? nameOf(tests, step.test, language) : nameOf(repairs, step.repair, language),
  );
}
