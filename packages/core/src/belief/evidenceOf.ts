import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { findUnknownId } from '../errors/findUnknownId.ts';
import type { CompiledModel, CompiledTest } from '../model/compiledModel.ts';
import type { Repair } from '../model/model.ts';
import { factorOfHandling } from './factorOfHandling.ts';
import { likelihoodsOfRuns } from '../reading/likelihoodsOfRuns.ts';
import { runOfReading, type ReadingRun } from '../reading/runOfReading.ts';
import type { Facts } from './facts.ts';
import { findResultProblems } from './findResultProblems.ts';
import { likelihoodOfRepair } from './likelihoodOfRepair.ts';
import type { TestResult } from './observation.ts';

/** Everything recorded as factors over mechanisms and the cause: those of each test (all its runs together), one per repair. What says
 * nothing (the fault was asleep) is left out.
 * @throws EvidenceError with all problems: unknown feature, value, test, outcome, repair; a test that does not apply here. */
export function evidenceOf(compiled: CompiledModel, facts: Facts): readonly LikelihoodFactor[] {
  const problems = [...contextProblems(compiled, facts), ...observationProblems(compiled, facts)];
  if (atLeastOne(problems)) throw new EvidenceError(problems);

  const { repairs } = compiled.model;
  const runs = new Map<string, ReadingRun[]>();
  const factors: (LikelihoodFactor | undefined)[] = [];
  for (const observation of facts.observations) {
    const repair = observation.kind === 'repair-tried' ? repairs.findIndex((r) => r.id === observation.repair) : -1;
    const result = observation.kind === 'result' ? observation : sameQuestion(repairs[repair], observation.cured);
    const compiledTest = result === undefined ? undefined : compiled.tests.get(result.test);
    if (result !== undefined && compiledTest !== undefined) {
      const run = runOf(compiledTest, result);
      if (run !== undefined) runs.set(result.test, [...(runs.get(result.test) ?? []), run]);
    } else if (observation.kind === 'repair-tried') {
      factors.push(likelihoodOfRepair(compiled, repair, observation.cured));
    }
  }
  for (const [test, ofTest] of runs) {
    const compiledTest = compiled.tests.get(test);
    if (compiledTest === undefined) continue;
    factors.push(...likelihoodsOfRuns(compiled, compiledTest, ofTest), factorOfHandling(compiled, compiledTest));
  }
  return factors.filter((factor) => factor !== undefined);
}

type Result = Pick<TestResult, 'test' | 'outcome' | 'likelihood' | 'reading' | 'faultActive'>;

/** A replaced part asked the same question as the test of that name: entered as a run of that test, it cannot count twice. */
function sameQuestion(repair: Repair | undefined, cured: boolean): Result | undefined {
  if (repair?.sameAs === undefined) return undefined;
  return { test: repair.sameAs.test, outcome: cured ? repair.sameAs.cured : repair.sameAs.notCured };
}

function runOf(compiledTest: CompiledTest, result: Result): ReadingRun | undefined {
  const { reading, outcome, faultActive = 'yes' } = result;
  if (reading !== undefined) return runOfReading(compiledTest, reading, faultActive, outcome);
  return { kind: 'outcome', run: { support: supportOf(compiledTest, result), faultActive } };
}

function supportOf({ outcomes }: CompiledTest, { outcome, likelihood }: Result): Float64Array {
  return Float64Array.from(outcomes, (id) =>
    likelihood === undefined ? Number(id === outcome) : (likelihood[id] ?? 0),
  );
}

function contextProblems({ model }: CompiledModel, { context }: Facts): Problem[] {
  return Object.entries(context).flatMap(([feature, value]) => {
    const path = `/context/${feature}`;
    const known = model.context.find(({ id }) => id === feature);
    if (known === undefined) return findUnknownId('feature', feature, model.context, path);
    return findUnknownId('value', value, known.values, path, feature);
  });
}

function observationProblems({ model }: CompiledModel, { context, observations }: Facts): Problem[] {
  return observations.flatMap((observation, at) => {
    const path = `/observations/${at}`;
    return observation.kind === 'result'
      ? findResultProblems(model, context, observation, path)
      : findUnknownId('repair', observation.repair, model.repairs, `${path}/repair`);
  });
}
