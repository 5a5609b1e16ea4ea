import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { sweepModel } from '../compiled/sweepModel.ts';
import { type Tariff } from '../cost/tariff.ts';
import { openAfterTest } from '../problem/openAfterTest.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { SweptFacts } from '../belief/sweepFacts.ts';
import { likelihoodOfRuns } from '../evidence/likelihoodOfRuns.ts';
import type { FollowUpFacts } from '../repairs/costAfterLook.ts';

/** Makes the table of tests that a result would call for, with their exact likelihoods given everything on record and that result.
 * @param waiting follow-ups that would be proposed, were something there to follow */
export function makeFollowUps(
  compiled: CompiledModel,
  { facts, outcomeGivenCause }: SweptFacts,
  tariff: Tariff,
  open: number,
  waiting: ReadonlySet<string>,
): (test: number, outcome: number) => readonly FollowUpFacts[] {
  if (waiting.size === 0) return () => [];
  const { testList } = compiled;
  const onRecord = evidenceOf(compiled, facts);
  const followers = testList.filter(({ test }) => waiting.has(test.id));
  const sweepAfter = (look: CompiledTest, outcome: number, asked: readonly CompiledTest[]) => {
    const support = Float64Array.from(look.outcomes, (_, o) => Number(o === outcome));
    const result = likelihoodOfRuns(compiled, look, [{ support, faultActive: 'yes' }]);
    const likelihoods = result === undefined ? onRecord : [...onRecord, result];
    return sweepModel(compiled, { likelihoods, targets: asked.map(({ table }) => table) }).targets;
  };
  return (at, o) => {
    const look = testList[at]!;
    const called = followers.filter(({ test }) =>
      test.follows!.some(({ test: id, outcomes }) => id === look.test.id && outcomes.includes(look.outcomes[o]!)),
    );
    if (called.length === 0) return [];
    // what depends on the cause alone is the same whatever else was seen
    const tables = called.every(({ matches }) => matches.parents.every((one) => one === 'cause'))
      ? outcomeGivenCause
      : sweepAfter(look, o, called);
    const openAfter = openAfterTest(tariff, at, open);
    return called.map(({ test, index }) => ({
      index,
      cost: tariff.test(index, openAfter).total,
      opens: tariff.testAccess[index]! & ~openAfter,
      open: openAfterTest(tariff, index, openAfter),
      table: tables.get(test.id)!,
    }));
  };
}
