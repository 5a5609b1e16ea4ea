import { testAsked } from '../evidence/testAsked.ts';
import type { Facts } from '../evidence/facts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Tariff } from '../cost/tariff.ts';
import type { TestAdvice } from './advice.ts';

/** The look to make on the way to a repair, before its part is bought: a repair that opens the engine shows the part. The best of the tests behind
 * what the repair opens, which open nothing that it does not; `undefined` when the repair opens no engine, when something behind it was looked at
 * already, or when nothing there tells anything.
 * @param tests those that are possible now, best first */
export function lookBefore(
  compiled: CompiledModel,
  tariff: Tariff,
  { observations }: Facts,
  repair: string,
  tests: readonly TestAdvice[],
): TestAdvice | undefined {
  const needs = tariff.repairAccess[compiled.model.repairs.findIndex(({ id }) => id === repair)]!;
  const inside = needs & tariff.opensEngine;
  const isInside = (id: string): boolean => {
    const index = compiled.tests.get(id)?.index;
    return index !== undefined && (tariff.testAccess[index]! & inside) !== 0;
  };
  if (inside === 0 || observations.some((one) => isInside(testAsked(compiled, one)))) return undefined;
  const none = compiled.model.access.reduce(
    (bits, { openMinutes, closeMinutes }, at) => (openMinutes.best + closeMinutes.best > 0 ? bits : bits | (1 << at)),
    0,
  );
  return tests.find(
    ({ test, grossValue }) =>
      isInside(test) &&
      grossValue.amount > 0 &&
      (tariff.testAccess[compiled.tests.get(test)!.index]! & ~needs & ~none) === 0,
  );
}
