import type { TestAdvice } from './advice.ts';

/** What can hurt in a test or in what its results may call for: ids of cautions, each once, those of the test first.
 * @example cautionsOfTest({ cautions: ['fire'], followUps: [] }) // ['fire'] */
export function cautionsOfTest({ cautions, followUps }: Pick<TestAdvice, 'cautions' | 'followUps'>): readonly string[] {
  return [...new Set([...cautions, ...followUps.flatMap((one) => one.cautions)])];
}
