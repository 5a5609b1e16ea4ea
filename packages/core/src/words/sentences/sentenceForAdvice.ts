import type { Advice, TestAdvice } from '../../advice/advice.ts';
import type { Model } from '../../model/model.ts';
import { sentenceForNeedless } from './sentenceForNeedless.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** The best next step with its price, its time and why.
 * @example
 * ```ts
 * const advice = advise(compiled, belief);
 * const repairNow = { ...advice.repairNow, referralFee: { amount: 150, currency: 'EUR' } };
 * const said = sentenceForAdvice(model, { ...advice, best: { ...advice.best, kind: 'refer' }, repairNow }, english);
 * said // 'Next: refer it to a specialist. No test or repair here is worth its price any more; a referral is estimated at €150.'
 * ``` */
export function sentenceForAdvice(model: Model, advice: Advice, language: Language): string {
  const { messages, formatMinutes, formatMoney, formatProbability } = language;
  const { best, proof, repairNow } = advice;
  if (best.kind === 'prove') {
    if (proof === undefined) return messages.expectedCost({ cost: formatMoney(advice.expectedCost) });
    const { exposure, minutes, distanceKm, days = 0 } = proof.check;
    return messages.bestIsProof({
      repair: nameOf(model.repairs, proof.repair, language),
      exposure,
      minutes: formatMinutes(minutes.best),
      km: `${distanceKm} km`,
      days,
      accept: proof.accept,
    });
  }
  if (best.kind === 'refer') return messages.bestIsReferral({ fee: formatMoney(repairNow.referralFee) });
  if (best.kind === 'test') {
    const test = advice.tests.find((one) => one.test === best.test);
    if (test === undefined) return messages.nothingToTest();
    if (best.onTheWayTo !== undefined) {
      const look = messages.bestIsLook({
        test: nameOf(model.tests, test.test, language),
        price: formatMoney(test.price),
        minutes: formatMinutes(test.minutes),
        repair: nameOf(model.repairs, best.onTheWayTo, language),
      });
      return `${look} ${opening(model, test.accessToOpen, language)}`;
    }
    const sentence = messages.bestIsTest({
      test: nameOf(model.tests, test.test, language),
      price: formatMoney(test.price),
      minutes: formatMinutes(test.minutes),
      repairNow: formatMoney(repairNow.expectedCost),
      withIt: formatMoney(test.expectedCostWith),
      saving: formatMoney(test.netValue),
    });
    return [sentence, opening(model, test.accessToOpen, language), ...needless(test, language)].join(' ');
  }
  const at = repairNow.steps.findIndex(({ repair }) => repair === best.repair);
  const [step, following] = [repairNow.steps[at], repairNow.steps[at + 1]];
  if (step === undefined) return messages.expectedCost({ cost: formatMoney(advice.expectedCost) });
  return [
    messages.bestIsRepair({
      repair: nameOf(model.repairs, step.repair, language),
      price: formatMoney(step.price),
      minutes: formatMinutes(step.minutes),
      cures: formatProbability(step.cures),
    }),
    opening(model, step.accessToOpen, language),
    ...needless(step, language),
    following === undefined
      ? messages.thenReferral()
      : messages.thenRepair({ repair: nameOf(model.repairs, following.repair, language) }),
    messages.expectedCost({ cost: formatMoney(advice.expectedCost) }),
  ].join(' ');
}

function needless({ needless: counts }: Pick<TestAdvice, 'needless'>, language: Language): string[] {
  return counts === undefined ? [] : [`${sentenceForNeedless(counts, language)}.`];
}

function opening(model: Model, accessToOpen: readonly string[], language: Language): string {
  const { messages } = language;
  if (accessToOpen.length === 0) return messages.opensNothing();
  return messages.opens({ access: messages.inTurn(accessToOpen.map((id) => nameOf(model.access, id, language))) });
}
