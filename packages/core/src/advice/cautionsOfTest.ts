import type { TestAdvice } from './advice.ts';
import type { Visit } from './visitOf.ts';

/** What can hurt in a test, in what its results may call for, or in what is done in one go with it: ids of cautions, each once, those of the
 * test first. @param visit of the step that is best; none for others
 * @example cautionsOfTest({ cautions: ['fire'], followUps: [] }) // ['fire'] */
export function cautionsOfTest(
  { cautions, followUps }: Pick<TestAdvice, 'cautions' | 'followUps'>,
  visit?: Pick<Visit, 'tests'>,
): readonly string[] {
  const others = [...followUps, ...(visit?.tests ?? [])];
  return [...new Set([...cautions, ...others.flatMap((one) => one.cautions)])];
}
