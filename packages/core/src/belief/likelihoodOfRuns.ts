import type { LikelihoodFactor } from '@faultodds/inference';
import type { CompiledModel, CompiledTest } from '../model/compiledModel.ts';
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
 *   a P(outcome | states) + (1 - a) P(outcome | default row), a = the cause's active fraction.
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
  { table, asleep, test }: CompiledTest,
  runs: readonly Run[],
): LikelihoodFactor {
  const { states, parents } = table;
  const ownsCause = parents.includes('cause'); // then it is the last parent
  const needsCause = runs.some((run) => run.faultActive === 'unknown');
  const causes = compiled.causes.length;
  const spread = needsCause && !ownsCause ? causes : 1;
  const values = new Float64Array((table.table.length / states) * spread);
  // what one draw shared by all runs supports
  const shared = Float64Array.from({ length: states }, (_, s) =>
    runs.reduce((product, run) => product * run.support[s]!, 1),
  );
  const sharedActive = runs.some((run) => run.faultActive === 'yes') ? 'yes' : 'unknown';
  const r = runs.length > 1 ? test.repeatability.best : 0;

  for (let at = 0; at < values.length; at += 1) {
    const row = Math.floor(at / spread) * states;
    const active = needsCause ? compiled.activeFractions[at % causes]! : 1;
    const likelihood = (support: Float64Array, faultActive: FaultActive): number => {
      const awake = faultActive === 'yes' ? 1 : active;
      let sum = 0;
      for (let s = 0; s < states; s += 1)
        sum += support[s]! * (awake * table.table[row + s]! + (1 - awake) * asleep[s]!);
      return sum;
    };
    const independent = runs.reduce((product, run) => product * likelihood(run.support, run.faultActive), 1);
    values[at] = r === 0 ? independent : r * likelihood(shared, sharedActive) + (1 - r) * independent;
  }
  return { variables: spread > 1 ? [...parents, 'cause'] : parents, values };
}
