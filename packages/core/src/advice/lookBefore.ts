import { testAsked } from '../evidence/testAsked.ts';
import type { SweptFacts } from '../belief/sweepFacts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Tariff } from '../cost/tariff.ts';
import type { TestAdvice } from './advice.ts';

// A test shows a part where one of its outcomes is common with what the repair cures, and several times rarer without.
const COMMON = 0.25;
const RARER = 3;

/** The look to make on the way to a repair, before its part is bought: a repair that opens the engine shows the part. The best of the tests behind
 * what the repair still opens that can show what it cures, and open nothing that it does not; `undefined` when nothing of the engine is opened any
 * more, when something behind it was looked at already, or when nothing there shows the part.
 * @param tests those that are possible now, best first */
export function lookBefore(
  compiled: CompiledModel,
  tariff: Tariff,
  { facts, posterior, outcomeGivenCause }: SweptFacts,
  repair: string,
  open: number,
  tests: readonly TestAdvice[],
): TestAdvice | undefined {
  const at = compiled.model.repairs.findIndex(({ id }) => id === repair);
  const needs = tariff.repairAccess[at]!;
  const inside = needs & tariff.opensEngine & ~open;
  const isInside = (id: string): boolean => {
    const index = compiled.tests.get(id)?.index;
    return index !== undefined && (tariff.testAccess[index]! & inside) !== 0;
  };
  if (inside === 0 || facts.observations.some((one) => isInside(testAsked(compiled, one)))) return undefined;
  const none = compiled.model.access.reduce(
    (bits, { openMinutes, closeMinutes }, bit) => (openMinutes.best + closeMinutes.best > 0 ? bits : bits | (1 << bit)),
    0,
  );
  const cured = new Set(compiled.cures[at]!.map(({ cause }) => cause));
  const showsPart = (id: string): boolean => {
    const table = outcomeGivenCause.get(id)!;
    const count = compiled.tests.get(id)!.outcomes.length;
    let [mass, rest] = [0, 0];
    const shown = [new Float64Array(count), new Float64Array(count)] as const;
    posterior.forEach((p, c) => {
      const of = shown[cured.has(c) ? 0 : 1];
      if (cured.has(c)) mass += p;
      else rest += p;
      for (let o = 0; o < count; o += 1) of[o]! += p * table[c * count + o]!;
    });
    return shown[0].some((p, o) => p >= COMMON * mass && p * rest >= RARER * shown[1][o]! * mass);
  };
  return tests.find(
    ({ test }) =>
      isInside(test) && (tariff.testAccess[compiled.tests.get(test)!.index]! & ~needs & ~none) === 0 && showsPart(test),
  );
}
