import type { Advice } from '../../advice/advice.ts';
import type { Model } from '../../model/model.ts';
import { sentenceForNeedless } from './sentenceForNeedless.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** Whether testing still pays, and what the best remaining test would save.
 * @example sentenceForStopping(model, { ...advise(compiled, belief), tests: [] }, english) // 'Stop testing: no test is left that applies here.' */
export function sentenceForStopping(model: Model, { tests }: Advice, language: Language): string {
  const { messages, formatMoney } = language;
  const [best] = tests;
  if (best === undefined) return messages.nothingToTest();
  const test = nameOf(model.tests, best.test, language);
  if (best.netValue.amount > 0) return messages.testingPays({ test, saving: formatMoney(best.netValue) });
  const saves = formatMoney(best.grossValue);
  return saves === formatMoney({ ...best.grossValue, amount: 0 })
    ? messages.testingSavesNothing()
    : [
        messages.testingStops({ test, price: formatMoney(best.price), saves }),
        ...(best.needless === undefined ? [] : [`${sentenceForNeedless(best.needless, language)}.`]),
      ].join(' ');
}
