import type { TestAdvice } from '../../../../advice/advice.ts';
import { sentenceForTest as inLanguage } from '../../../sentences/sentenceForTest.ts';
import { german } from '../german.ts';

/** One line for a test in a list of next steps: price, time, and whether it saves more than it costs. */
export function sentenceForTest(advice: TestAdvice): string {
  return inLanguage(advice, german);
}
