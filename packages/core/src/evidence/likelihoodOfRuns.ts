import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
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
  { test, outcomes, matches }: CompiledTest,
  runs: readonly Run[],
): LikelihoodFactor {
  const { parents, rowOf } = matches;
  const rows = test.rows.map((row) => outcomes.map((outcome) => row.p[outcome]!));
  const asleep = rows.at(-1)!;
  const r = runs.length > 1 ? test.repeatability.best : 0;
  // what one draw shared by all runs supports
  const shared = Float64Array.from(outcomes, (_, s) => runs.reduce((product, run) => product * run.support[s]!, 1));
  const sharedActive = runs.some((run) => run.faultActive === 'yes') ? 'yes' : 'unknown';

  const likelihoodOf = (row: readonly number[], active: number): number => {
    const one = (support: Float64Array, faultActive: FaultActive): number => {
      const awake = faultActive === 'yes' ? 1 : active;
      return support.reduce((sum, weight, s) => sum + weight * (awake * row[s]! + (1 - awake) * asleep[s]!), 0);
    };
    const independent = runs.reduce((product, run) => product * one(run.support, run.faultActive), 1);
    return r === 0 ? independent : r * one(shared, sharedActive) + (1 - r) * independent;
  };

  if (runs.every((run) => run.faultActive === 'yes')) {
    const ofRow = rows.map((row) => likelihoodOf(row, 1));
    const values = new Float64Array(rowOf.length);
    for (let at = 0; at < values.length; at += 1) values[at] = ofRow[rowOf[at]!]!;
    return { variables: parents, values };
  }
  const causes = compiled.causes.length;
  const ofRowAndCause = rows.map((row) => compiled.activeFractions.map((active) => likelihoodOf(row, active)));
  if (parents.at(-1) === 'cause') {
    const values = new Float64Array(rowOf.length);
    for (let at = 0; at < values.length; at += 1) values[at] = ofRowAndCause[rowOf[at]!]![at % causes]!;
    return { variables: parents, values };
  }
  const values = new Float64Array(rowOf.length * causes);
  rowOf.forEach((row, at) => values.set(ofRowAndCause[row]!, at * causes));
  return { variables: [...parents, 'cause'], values };
}
