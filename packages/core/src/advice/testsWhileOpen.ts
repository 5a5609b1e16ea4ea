import type { Belief } from '../belief/belief.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { TestAdvice } from './advice.ts';
import { checkCircumstances } from '../cost/checkCircumstances.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import type { Money } from '../cost/money.ts';
import { advise } from './advise.ts';

/** A test behind an open access. */
export interface TestWhileOpen {
  readonly advice: TestAdvice;
  /** What it would cost on another visit, with everything closed again. */
  readonly priceLater: Money;
  /** Doing it now saves more than it costs. */
  readonly pays: boolean;
}

/** With an access just opened: every test that needs it, as if it stood open, best first; `pays` where it is worth its price now.
 * @throws EvidenceError `access-unknown`, and as `advise` does
 * @example
 * ```ts
 * const tests = testsWhileOpen(pump, beliefOf(pump, { context: {}, observations: [] }), {}, 'lid-off');
 * tests.map(({ advice, priceLater }) => [advice.test, advice.price.amount, priceLater.amount]); // [['vacuum', 15, 27], ['wheel-look', 34, 46]]
 * ``` */
export function testsWhileOpen(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  access: string,
): readonly TestWhileOpen[] {
  checkCircumstances(compiled, circumstances);
  const bit = compiled.accessBit.get(access) ?? accessBits(compiled, [access]);
  const behind = new Set(
    compiled.testList
      .filter(({ test }) => (accessBits(compiled, [test.access]) & bit) !== 0)
      .map(({ test }) => test.id),
  );
  const { openAccess = [] } = circumstances;
  const now = advise(compiled, belief, { ...circumstances, openAccess: [...openAccess, access] });
  const closed = advise(compiled, belief, { ...circumstances, openAccess: [] });
  const later = new Map(closed.tests.map(({ test, price }) => [test, price]));
  return now.tests
    .filter(({ test }) => behind.has(test))
    .map((advice) => ({
      advice,
      priceLater: later.get(advice.test)!,
      pays: advice.netValue.amount > 0,
    }));
}
