import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import type { Row } from '../model/row.ts';
import type { FaultActive } from './observation.ts';

/** One run of a test: how strongly what was seen supports each outcome (one-hot for a named outcome), and whether the fault was present. */
export interface Run {
  /** Length = number of outcomes. */
  readonly support: Float64Array;
  readonly faultActive: FaultActive;
}

/** The likelihood of all runs of one test together, as a factor over the mechanisms the test reads (and the cause); `undefined` when
 * they say nothing.
 *
 * - A run counts sum over outcomes of support times P(outcome | mechanisms, cause).
 * - A test that needs the fault active says nothing while it surely sleeps; when that is unknown, the outcome is a mixture:
 *   a P(outcome | states) + (1 - a) P(outcome | asleep), a = the model's `presentIfNotNoted`. Asleep the same is shown whatever the cause, so
 *   that what is believed then lies between what is believed after a run with the fault present and without the run.
 * - Runs share their error: with probability r (the test's repeatability) all tell one draw, else they are independent. The same
 *   result twice is worth less than two, and the order of runs does not matter.
 *
 * The same factor object is returned for the same runs, so that the kernel checks it once. */
export function likelihoodOfRuns(
  compiled: CompiledModel,
  compiledTest: CompiledTest,
  allRuns: readonly Run[],
): LikelihoodFactor | undefined {
  const { test, factors } = compiledTest;
  const runs = test.faultMustBeActive
    ? allRuns.filter((run) => run.faultActive !== 'no')
    : allRuns.map((run): Run => ({ ...run, faultActive: 'yes' }));
  if (runs.length === 0) return undefined;
  const key = runs
    .map((run) => `${run.support.join()}${run.faultActive}`)
    .sort()
    .join('|');
  const known = factors.get(key);
  if (known !== undefined) return known;
  const factor = makeFactor(compiled, compiledTest, runs);
  factors.set(key, factor);
  return factor;
}

function makeFactor(
  compiled: CompiledModel,
  { test, outcomes, matches }: CompiledTest,
  runs: readonly Run[],
): LikelihoodFactor {
  const { parents, rowOf } = matches;
  const numbersOf = ({ p }: Row): readonly number[] => outcomes.map((outcome) => p[outcome]!);
  const asleep = numbersOf(test.asleep ?? test.rows.at(-1)!);
  const present = compiled.model.presentIfNotNoted.best;
  const r = runs.length > 1 ? test.repeatability.best : 0;
  // what one draw shared by all runs supports
  const shared = Float64Array.from(outcomes, (_, s) => runs.reduce((product, run) => product * run.support[s]!, 1));
  const sharedActive = runs.some((run) => run.faultActive === 'yes') ? 'yes' : 'unknown';

  const likelihoodOf = (row: readonly number[]): number => {
    const one = (support: Float64Array, faultActive: FaultActive): number => {
      const awake = faultActive === 'yes' ? 1 : present;
      return support.reduce((sum, weight, s) => sum + weight * (awake * row[s]! + (1 - awake) * asleep[s]!), 0);
    };
    const independent = runs.reduce((product, run) => product * one(run.support, run.faultActive), 1);
    return r === 0 ? independent : r * one(shared, sharedActive) + (1 - r) * independent;
  };

  const ofRow = test.rows.map((row) => likelihoodOf(numbersOf(row)));
  const values = new Float64Array(rowOf.length);
  for (let at = 0; at < values.length; at += 1) values[at] = ofRow[rowOf[at]!]!;
  return { variables: parents, values };
}
