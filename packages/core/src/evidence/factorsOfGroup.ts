import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { isAsleep, likelihoodsOfRuns, power } from './likelihoodsOfRuns.ts';
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

  const counted = tests.map(([of, runs]) => runs.filter((run) => !isAsleep(of, run)).length);
  const names = compiled.structure.questions.get(tests[0]![0].test.id) ?? [];
  const answered = names.filter((name) => Object.hasOwn(context, name));
  const all = counted.reduce((sum, count) => sum + count, 0);
  const inflation = (n: number, r: number): number => 1 + Math.max(0, n - 1) * r;
  const largest = Math.max(...tests.map(([{ test }]) => test.repeatability.best));
  const isShared = tests.length > 1 || answered.length > 0;
  const together = inflation(all + answered.length, largest);
  return [
    ...tests.flatMap(([of, runs], at) => {
      const own = inflation(counted[at]!, of.test.repeatability.best);
      return likelihoodsOfRuns(compiled, of, runs).map((one) => (isShared ? power(one, own / together) : one));
    }),
    ...(all > 0
      ? answered.flatMap((feature) => factorOfIntake(compiled, feature, context[feature]!, 1 / together - 1))
      : []),
    ...handling,
  ];
}
