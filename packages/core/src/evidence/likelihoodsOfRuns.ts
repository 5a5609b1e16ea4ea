import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { likelihoodOfRuns, type Run } from './likelihoodOfRuns.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { readingTest } from './readingTest.ts';
import type { MeasuredRun, ReadingRun } from './runOfReading.ts';

/** The likelihood of all runs of one test together, numbers and named outcomes alike, as factors to multiply.
 *
 * Runs of a test share their error, so n of them are worth n / (1 + (n - 1) r), r = the test's repeatability: each run's log likelihood
 * counts 1 / (1 + (n - 1) r). For normal errors of equal spread and correlation r that is exact (their mean has the variance
 * s² (1 + (n - 1) r) / n; Kish 1965, Survey Sampling, 8.2, the design effect). Named outcomes among themselves are combined by
 * `likelihoodOfRuns`, and keep their share of the whole. A reading whose error is its own is weighed by itself.
 *
 * An outcome noted beside a number adds only what the number leaves open: P(outcome | states) over that of all outcomes the number
 * can be called. */
export function likelihoodsOfRuns(
  compiled: CompiledModel,
  compiledTest: CompiledTest,
  allRuns: readonly ReadingRun[],
): readonly LikelihoodFactor[] {
  const { repeatability } = compiledTest.test;
  const runs = allRuns.filter((run) => !isAsleep(compiledTest, run));
  const outcomes = runs.flatMap((run) => (run.kind === 'outcome' ? [run.run] : []));
  const measured = runs.flatMap((run) => (run.kind === 'measured' ? [run] : []));
  const noted = measured.flatMap((run) => (run.noted === undefined ? [] : [run.noted]));
  const shared = measured.filter(({ model }) => model.ownError !== true);
  const inflation = (n: number): number => 1 + Math.max(0, n - 1) * repeatability.best;
  const together = inflation(outcomes.length + shared.length);

  const ofOutcomes = likelihoodOfRuns(compiled, compiledTest, outcomes);
  const factors = [
    ofOutcomes === undefined ? undefined : power(ofOutcomes, inflation(outcomes.length) / together),
    ...grouped(shared).map((group) => likelihoodOfGroup(compiled, compiledTest, group, 1 / together)),
    ...grouped(measured.filter(({ model }) => model.ownError === true)).map((group) =>
      likelihoodOfGroup(compiled, compiledTest, group, 1 / inflation(group.length)),
    ),
    ...noted.map((pair) =>
      likelihoodOfNoted(compiled, compiledTest, pair, 1 / inflation(noted.length + outcomes.length)),
    ),
  ];
  return factors.filter((factor) => factor !== undefined);
}

/** Whether a run says nothing: the fault slept, or it speaks for nothing more than for anything else. */
export function isSilent(of: CompiledTest, run: ReadingRun): boolean {
  const support = run.kind === 'outcome' ? run.run.support : run.logSupport;
  return isAsleep(of, run) || support.every((one) => one === support[0]);
}

function isAsleep({ test }: CompiledTest, run: ReadingRun): boolean {
  return test.faultMustBeActive && (run.kind === 'outcome' ? run.run.faultActive : run.faultActive) === 'no';
}

/** Runs of one reading under one state of the fault: what they say adds up. */
function grouped(runs: readonly MeasuredRun[]): MeasuredRun[][] {
  const groups = new Map<string, MeasuredRun[]>();
  for (const run of runs) {
    const key = `${run.model.id} ${run.faultActive}`;
    groups.set(key, [...(groups.get(key) ?? []), run]);
  }
  return [...groups.values()];
}

function likelihoodOfGroup(
  compiled: CompiledModel,
  compiledTest: CompiledTest,
  group: readonly MeasuredRun[],
  weight: number,
): LikelihoodFactor | undefined {
  const [first] = group;
  if (first === undefined) return undefined;
  // sorted, so that the same numbers in another order round alike
  const logs = first.logSupport.map((_, d) =>
    group
      .map(({ logSupport }) => logSupport[d]!)
      .sort((a, b) => a - b)
      .reduce((sum, log) => sum + log, 0),
  );
  const run: Run = { support: logs.map((log) => Math.exp(weight * log)), faultActive: first.faultActive };
  return likelihoodOfRuns(compiled, readingTest(compiled, compiledTest, first.model), [run]);
}

function likelihoodOfNoted(
  compiled: CompiledModel,
  compiledTest: CompiledTest,
  { outcome, band }: NonNullable<MeasuredRun['noted']>,
  weight: number,
): LikelihoodFactor | undefined {
  const [above, below] = [outcome, band].map((run) => likelihoodOfRuns(compiled, compiledTest, [run]));
  if (above === undefined || below === undefined) return undefined;
  return derived(above, `${band.support.join()} ${weight}`, (value, at) => (value / below.values[at]!) ** weight);
}

/** A factor raised to an exponent: the same object for the same question. */
export function power(factor: LikelihoodFactor, exponent: number): LikelihoodFactor {
  return exponent === 1 ? factor : derived(factor, String(exponent), (value) => value ** exponent);
}

// The kernel checks a factor once and knows it again: the same question gets the same object.
const derivedFrom = new WeakMap<LikelihoodFactor, Map<string, LikelihoodFactor>>();

function derived(from: LikelihoodFactor, key: string, change: (value: number, at: number) => number): LikelihoodFactor {
  const known = derivedFrom.get(from) ?? new Map<string, LikelihoodFactor>();
  derivedFrom.set(from, known);
  const made = known.get(key) ?? { ...from, values: from.values.map(change) };
  known.set(key, made);
  return made;
}
