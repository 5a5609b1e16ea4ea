import type { Belief } from '../belief/belief.ts';
import { accessBits, accessIds } from '../cost/accessBits.ts';
import { isCalledFor, outcomesSeen } from '../evidence/outcomesSeen.ts';
import { testAsked } from '../evidence/testAsked.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { TestNotNow } from './testNotNow.ts';
import type { Circumstances } from '../cost/circumstances.ts';

type Reason = Pick<TestNotNow, 'test' | 'reason' | 'missing'>;

/** Tests that are not proposed, each with its reason: not on this car, on record, its question answered otherwise, equipment missing,
 * nothing on record that it could look closer at, the engine apart. */
export function findTestsNotNow(
  compiled: CompiledModel,
  { facts, predictive }: Belief,
  { equipment, openAccess = [] }: Circumstances,
): readonly Reason[] {
  const { testList, structure } = compiled;
  const seen = outcomesSeen(compiled, facts);
  const done = new Set(facts.observations.map((observation) => testAsked(compiled, observation)));
  const open = accessBits(compiled, openAccess);
  return testList.flatMap(({ test, index }): Reason[] => {
    const { id, appliesWhen, equipment: needed } = test;
    if (!Object.hasOwn(predictive, id)) {
      const facts = (appliesWhen ?? []).flatMap((r) =>
        Object.entries(r).map(([feature, value]) => `${feature}:${value}`),
      );
      return [{ test: id, reason: 'not-applicable', missing: facts }];
    }
    if (done.has(id)) return [{ test: id, reason: 'already-done', missing: [] }];
    const answered = (structure.questions.get(id) ?? []).filter(
      (name) => done.has(name) || Object.hasOwn(facts.context, name),
    );
    if (answered.length > 0) return [{ test: id, reason: 'same-question', missing: answered }];
    const missing = equipment === undefined ? [] : needed.filter((tool) => !equipment.includes(tool));
    if (missing.length > 0) return [{ test: id, reason: 'equipment', missing }];
    if (!isCalledFor(test, seen)) {
      return [{ test: id, reason: 'nothing-to-follow', missing: (test.follows ?? []).map((look) => look.test) }];
    }
    const apart = open & structure.closedForTest[index]!.impossibleWith;
    return apart === 0 ? [] : [{ test: id, reason: 'engine-apart', missing: accessIds(compiled, apart) }];
  });
}
