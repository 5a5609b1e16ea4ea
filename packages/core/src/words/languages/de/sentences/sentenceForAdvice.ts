import type { Advice } from '../../../../advice/advice.ts';
import type { Model } from '../../../../model/model.ts';
import { sentenceForAdvice as inLanguage } from '../../../sentences/sentenceForAdvice.ts';
import { german } from '../german.ts';

/** The best next step with its price, its time and why. */
export function sentenceForAdvice(model: Model, advice: Advice): string {
  return inLanguage(model, advice, german);
}
