import type { Advice } from '../../../../advice/advice.ts';
import type { Model } from '../../../../model/model.ts';
import { sentenceForStopping as inLanguage } from '../../../sentences/sentenceForStopping.ts';
import { german } from '../german.ts';

/** Whether testing still pays, and what the best remaining test would save. */
export function sentenceForStopping(model: Model, advice: Advice): string {
  return inLanguage(model, advice, german);
}
