import type { LikelihoodFactor } from '@faultodds/inference';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { nearestId } from '../errors/nearestId.ts';
import type { CompiledModel, CompiledTest } from '../model/compiledModel.ts';
import type { Repair } from '../model/model.ts';
import { appliesHere } from './appliesHere.ts';
import type { Facts } from './facts.ts';
import { likelihoodOfRepair } from './likelihoodOfRepair.ts';
import { likelihoodOfRuns, type Run } from './likelihoodOfRuns.ts';
import type { Observation, TestResult } from './observation.ts';

/** Everything recorded as factors over mechanisms and the cause: one per test (all its runs together), one per repair. What says
 * nothing (the fault was asleep) is left out.
 * @throws EvidenceError with all problems: unknown feature, value, test, outcome, repair; a test that does not apply here. */
export function evidenceOf(compiled: CompiledModel, facts: Facts): readonly LikelihoodFactor[] {
  const problems = [...contextProblems(compiled, facts), ...observationProblems(compiled, facts)];
  if (atLeastOne(problems)) throw new EvidenceError(problems);

  const { repairs } = compiled.model;
  const runs = new Map<string, Run[]>();
  const factors: (LikelihoodFactor | undefined)[] = [];
  for (const observation of facts.observations) {
    const repair = observation.kind === 'repair-tried' ? repairs.findIndex((r) => r.id === observation.repair) : -1;
    const result = observation.kind === 'result' ? observation : sameQuestion(repairs[repair], observation.cured);
    const compiledTest = result === undefined ? undefined : compiled.tests.get(result.test);
    if (result !== undefined && compiledTest !== undefined) {
      const run: Run = { support: supportOf(compiledTest, result), faultActive: result.faultActive ?? 'yes' };
      runs.set(result.test, [...(runs.get(result.test) ?? []), run]);
    } else if (observation.kind === 'repair-tried') {
      factors.push(likelihoodOfRepair(compiled, repair, observation.cured));
    }
  }
  for (const [test, ofTest] of runs) {
    const compiledTest = compiled.tests.get(test);
    if (compiledTest !== undefined) factors.push(likelihoodOfRuns(compiled, compiledTest, ofTest));
  }
  return factors.filter((factor) => factor !== undefined);
}

type Result = Pick<TestResult, 'test' | 'outcome' | 'likelihood' | 'faultActive'>;

/** A replaced part asked the same question as the test of that name: entered as a run of that test, it cannot count twice. */
function sameQuestion(repair: Repair | undefined, cured: boolean): Result | undefined {
  if (repair?.sameAs === undefined) return undefined;
  return { test: repair.sameAs.test, outcome: cured ? repair.sameAs.cured : repair.sameAs.notCured };
}

function supportOf({ outcomes }: CompiledTest, { outcome, likelihood }: Result): Float64Array {
  return Float64Array.from(outcomes, (id) => (likelihood === undefined ? Number(id === outcome) : (likelihood[id] ?? 0)));
}

function contextProblems({ model }: CompiledModel, facts: Facts): Problem[] {
  return Object.entries(facts.context).flatMap(([feature, value]) => {
    const known = model.context.find((f) => f.id === feature);
    if (known === undefined) {
      return [{ code: 'feature-unknown', path: `/context/${feature}`, message: `no intake feature '${feature}'`, hint: nearestId(feature, model.context.map((f) => f.id)) }];
    }
    if (known.values.some((v) => v.id === value)) return [];
    return [{ code: 'value-unknown', path: `/context/${feature}`, message: `'${feature}' has no value '${value}'`, hint: `use one of ${known.values.map((v) => v.id).join(', ')}` }];
  });
}

function observationProblems(compiled: CompiledModel, facts: Facts): Problem[] {
  return facts.observations.flatMap((observation, at) => {
    const path = `/observations/${at}`;
    if (observation.kind === 'repair-tried') {
      const repairs = compiled.model.repairs.map((repair) => repair.id);
      return repairs.includes(observation.repair)
        ? []
        : [{ code: 'repair-unknown', path: `${path}/repair`, message: `no repair '${observation.repair}'`, hint: nearestId(observation.repair, repairs) }];
    }
    return resultProblems(compiled, observation, facts, path);
  });
}

function resultProblems(compiled: CompiledModel, result: Extract<Observation, { kind: 'result' }>, facts: Facts, path: string): Problem[] {
  const compiledTest = compiled.tests.get(result.test);
  if (compiledTest === undefined) return [unknownTest(compiled, result.test, `${path}/test`)];
  const { test, outcomes } = compiledTest;
  if (!appliesHere(test, facts.context)) {
    const needs = (test.appliesWhen ?? []).map((r) => Object.entries(r).map(([f, v]) => `${f}: ${v}`).join(' and ')).join(', or ');
    return [{ code: 'test-not-applicable', path: `${path}/test`, message: `'${test.id}' does not apply to this car`, hint: `it needs the intake fact ${needs}` }];
  }
  const wrong = (id: string, at: string): Problem => ({
    code: 'outcome-unknown',
    path: `${path}/${at}`,
    message: `'${test.id}' has no outcome '${id}'`,
    hint: `use one of ${outcomes.join(', ')}`,
  });
  if ((result.outcome === undefined) === (result.likelihood === undefined)) {
    return [{ code: 'outcome-missing', path, message: 'expected either `outcome` or `likelihood`', hint: 'give exactly one of them' }];
  }
  if (result.outcome !== undefined) return outcomes.includes(result.outcome) ? [] : [wrong(result.outcome, 'outcome')];
  const entries = Object.entries(result.likelihood ?? {});
  const problems = entries.flatMap(([id, value]): Problem[] => {
    if (!outcomes.includes(id)) return [wrong(id, `likelihood/${id}`)];
    if (value >= 0 && Number.isFinite(value)) return [];
    return [{ code: 'likelihood-invalid', path: `${path}/likelihood/${id}`, message: `found ${value}`, hint: 'relative likelihoods are finite and not negative' }];
  });
  if (problems.length === 0 && !entries.some(([, value]) => value > 0)) {
    problems.push({ code: 'likelihood-invalid', path: `${path}/likelihood`, message: 'nothing is supported', hint: 'at least one outcome needs a likelihood above 0' });
  }
  return problems;
}

function unknownTest(compiled: CompiledModel, id: string, path: string): Problem {
  return { code: 'test-unknown', path, message: `no test '${id}'`, hint: nearestId(id, compiled.tests.keys()) };
}
