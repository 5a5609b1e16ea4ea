import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import type { Repair } from '../model/model.ts';
import { runOfReading, type ReadingRun } from './runOfReading.ts';
import { likelihoodOfRepair } from './likelihoodOfRepair.ts';
import type { Observation, TestResult } from './observation.ts';

/** What one observation adds to the evidence: a run of a test, or an attempt at a repair. Runs of one test share their error, so it is only
 * the whole group, all parts with one question or one repair, that has a likelihood. */
export type EvidencePart =
  | { readonly kind: 'run'; readonly group: string; readonly of: CompiledTest; readonly run: ReadingRun }
  | { readonly kind: 'repair'; readonly group: string; readonly factor: LikelihoodFactor };

/** What an observation of known ids adds; `undefined` when it adds nothing. */
export function evidencePartOf(compiled: CompiledModel, observation: Observation): EvidencePart | undefined {
  const { repairs } = compiled.model;
  const repair = observation.kind === 'repair-tried' ? repairs.findIndex(({ id }) => id === observation.repair) : -1;
  const result = observation.kind === 'result' ? observation : sameQuestion(repairs[repair], observation.cured);
  const of = result === undefined ? undefined : compiled.tests.get(result.test);
  if (result !== undefined && of !== undefined) {
    const run = runOf(of, result);
    // tests that ask one question are one group
    const [first = result.test] = compiled.structure.questions.get(result.test) ?? [];
    return run === undefined ? undefined : { kind: 'run', group: `test ${first}`, of, run };
  }
  if (observation.kind !== 'repair-tried') return undefined;
  const factor = likelihoodOfRepair(compiled, repair, observation.cured);
  return { kind: 'repair', group: `repair ${observation.repair}`, factor };
}

/** Parts by group, in the order in which each group first appears; which groups there are does not depend on the order of the parts. */
export function groupParts(parts: readonly EvidencePart[]): ReadonlyMap<string, readonly EvidencePart[]> {
  const groups = new Map<string, EvidencePart[]>();
  for (const part of parts) {
    const known = groups.get(part.group);
    if (known === undefined) groups.set(part.group, [part]);
    else known.push(part);
  }
  return groups;
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

/** Relative likelihoods as shares of the largest: only their ratios speak, and no number of runs multiplies them out of range. */
function supportOf({ outcomes }: CompiledTest, { outcome, likelihood }: Result): Float64Array {
  if (likelihood === undefined) return Float64Array.from(outcomes, (id) => Number(id === outcome));
  const largest = Math.max(...Object.values(likelihood));
  return Float64Array.from(outcomes, (id) => (likelihood[id] ?? 0) / largest);
}
