import type { TestNotNow } from '../../../../steps/testNotNow.ts';
import type { Model } from '../../../../model/model.ts';
import { sentenceForNotNow as inLanguage } from '../../../sentences/sentenceForNotNow.ts';
import { german } from '../german.ts';

/** Why a test is not among the next steps. */
export function sentenceForNotNow(model: Model, test: Pick<TestNotNow, 'test' | 'reason' | 'missing'>): string {
  return inLanguage(model, test, german);
}
