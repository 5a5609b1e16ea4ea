import type { CompiledModel } from '../compiled/compiledModel.ts';
import { sweepModel } from '../compiled/sweepModel.ts';
import type { Tariff } from '../cost/tariff.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { Facts } from '../evidence/facts.ts';
import { likelihoodOfRuns } from '../evidence/likelihoodOfRuns.ts';
import type { FollowUpFacts } from '../repairs/costAfterLook.ts';

/** Makes the table of tests that a result would call for, with their exact likelihoods given everything on record and that result.
 * @param waiting follow-ups that would be proposed, were something there to follow */
export function makeFollowUps(
  compiled: CompiledModel,
  facts: Facts,
  tariff: Tariff,
  open: number,
  waiting: ReadonlySet<string>,
): (test: number, outcome: number) => readonly FollowUpFacts[] {
  if (waiting.size === 0) return () => [];
  const { testList } = compiled;
  const onRecord = evidenceOf(compiled, facts);
  const followers = testList.filter(({ test }) => waiting.has(test.id));
  return (at, o) => {
    const look = testList[at]!;
    const called = followers.filter(({ test }) =>
      test.follows!.some(({ test: id, outcomes }) => id === look.test.id && outcomes.includes(look.outcomes[o]!)),
    );
    if (called.length === 0) return [];
    const support = Float64Array.from(look.outcomes, (_, k) => Number(k === o));
    const result = likelihoodOfRuns(compiled, look, [{ support, faultActive: 'yes' }]);
    const { targets } = sweepModel(compiled, {
      likelihoods: result === undefined ? onRecord : [...onRecord, result],
      targets: called.map(({ table }) => table),
    });
    const openAfter = open | tariff.testAccess[at]!;
    return called.map(({ test, index, outcomes }) => ({
      index,
      cost: tariff.test(index, openAfter).total,
      open: openAfter | tariff.testAccess[index]!,
      outcomes: outcomes.length,
      table: targets.get(test.id)!,
    }));
  };
}
