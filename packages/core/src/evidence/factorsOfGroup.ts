import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { isSilent, likelihoodsOfRuns, power } from './likelihoodsOfRuns.ts';
import type { EvidencePart } from './evidencePart.ts';
import { factorOfHandling } from './factorOfHandling.ts';
import { factorOfIntake } from './factorOfIntake.ts';
import type { Context } from './facts.ts';
import type { ReadingRun } from './runOfReading.ts';

/** The factors of one group: those of its tests (all runs together), or one per attempt at its repair. None when its parts say nothing or
 * there are none.
 *
 * Tests that ask one question share one likelihood, and so does an intake answer to it: n of them count n / (1 + (n - 1) r), as runs of one
 * test do, r = the largest repeatability among them. See `likelihoodsOfRuns`. */
export function factorsOfGroup(
  compiled: CompiledModel,
  group: readonly EvidencePart[],
  context: Context,
): readonly LikelihoodFactor[] {
  const runsOf = new Map<CompiledTest, ReadingRun[]>();
  for (const part of group) if (part.kind === 'run') runsOf.set(part.of, [...(runsOf.get(part.of) ?? []), part.run]);
  const tests = [...runsOf];
  if (tests.length === 0) return group.flatMap((part) => (part.kind === 'repair' ? [part.factor] : []));
  const handling = tests.flatMap(([of]) => factorOfHandling(compiled, of) ?? []);

  // what says nothing shares nothing
  const counted = tests.map(([of, runs]) => runs.filter((run) => !isSilent(of, run)).length);
  const names = compiled.structure.questions.get(tests[0]![0].test.id) ?? [];
  const answers = names.flatMap((name) => factorOfIntake(compiled, name, context[name]));
  const all = counted.reduce((sum, count) => sum + count, 0);
  const repeatabilities = tests.flatMap(([{ test }], at) => (counted[at]! > 0 ? [test.repeatability.best] : []));
  const isShared = all > 0 && repeatabilities.length + answers.length > 1;
  const together = inflation(all + answers.length, Math.max(...repeatabilities));
  return [
    ...tests.flatMap(([of, runs], at) => {
      const own = inflation(counted[at]!, of.test.repeatability.best);
      return likelihoodsOfRuns(compiled, of, runs).map((one) => (isShared ? power(one, own / together) : one));
    }),
    // the prior counts the answer in full: what is too much of it is taken back
    ...(isShared ? answers.map((answer) => power(answer, 1 - 1 / together)) : []),
    ...handling,
  ];
}

/** By how much n runs that share their error tell less than n of their own, r = the share of the error that repeats. */
function inflation(n: number, r: number): number {
  return 1 + Math.max(0, n - 1) * r;
}
