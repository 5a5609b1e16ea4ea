import { distributionOf } from './distributionOf.ts';
import { evidenceOfState } from './evidenceOfState.ts';
import { predictTargets } from './predictTargets.ts';
import { QueryError } from '../errors/queryError.ts';
import { readLikelihood, readTarget } from './readSweepFactor.ts';
import type { CompiledSweep, SweepQuestion, SweepResult } from './sweep.ts';
import type { SweepState } from './sweepState.ts';
import { takeFactor, takeFamilies } from './takeFactor.ts';
import { variablePositions } from '../network/variablePositions.ts';

/** Everything asked, given each state of the root, in one go.
 * Factors and targets are known by identity: keep the objects and pass them again, earlier likelihoods in the same order, and only
 * what the new ones touch is computed.
 * @throws QueryError when a factor, target or name does not fit the network. Impossible roots are an answer, not an error.
 * @example
 * ```ts
 * const isWet = { variables: ['wet'], values: Float64Array.of(1, 0) };
 * const umbrella = { id: 'umbrella', parents: ['wet'], states: 2, table: Float64Array.of(0.8, 0.2, 0.1, 0.9) };
 * const answer = sweepRoot(compileSweep(network, { root: 'rain' }), { likelihoods: [isWet], targets: [umbrella] });
 * [...answer.logEvidenceGivenRoot].map(Math.exp); // [0.9, 0.1]
 * [...(answer.targets.get('umbrella') ?? [])]; // [0.8, 0.2, 0.8, 0.2]
 * ``` */
export function sweepRoot(sweep: CompiledSweep, question: SweepQuestion): SweepResult {
  if (sweep.cache.entries > sweep.cache.limit) {
    sweep.cache.entries = 0;
    sweep.start.after.clear();
    sweep.start.answers.clear();
  }
  let state = sweep.start;
  question.likelihoods.forEach((factor, at) => {
    state = takeFactor(sweep, state, readLikelihood(sweep, factor, `/likelihoods/${at}`));
  });
  const { logEvidence, someImpossible } = evidenceOfState(sweep, state);
  const targets = new Map<string, Float64Array>();
  const records = question.targets.map((target, at) => {
    if (targets.has(target.id)) {
      const hint = 'give every target its own id';
      throw new QueryError([
        { code: 'target-duplicate', path: `/targets/${at}/id`, message: `two targets are called '${target.id}'`, hint },
      ]);
    }
    targets.set(target.id, logEvidence);
    return readTarget(sweep, target, `/targets/${at}`);
  });
  predictTargets(sweep, state, records).forEach((answer, at) => {
    const { id, states } = question.targets[at]!;
    targets.set(id, someImpossible ? uniformWhereImpossible(answer, logEvidence, states) : answer);
  });
  const posteriors = new Map<string, Float64Array>();
  for (const variable of variablePositions(sweep.network, question.posteriorsOf ?? [], '/posteriorsOf')) {
    posteriors.set(sweep.network.variables[variable]!.name, posteriorGivenRoot(sweep, state, variable));
  }
  return { logEvidenceGivenRoot: logEvidence, targets, posteriors };
}

function posteriorGivenRoot(sweep: CompiledSweep, state: SweepState, variable: number): Float64Array {
  const roots = sweep.cardinalities[sweep.root]!;
  const states = sweep.cardinalities[variable]!;
  const answer = new Float64Array(roots * states);
  if (variable === sweep.root) {
    for (let r = 0; r < roots; r += 1) answer[r * states + r] = 1;
    return answer;
  }
  const component = takeFamilies(sweep, state, [variable]).componentOf[variable]!;
  const distribution = distributionOf(component, [variable], sweep.cardinalities);
  component.classOf.forEach((c, r) => {
    for (let s = 0; s < states; s += 1) answer[r * states + s] = distribution[c * states + s]!;
  });
  const { logEvidence, someImpossible } = evidenceOfState(sweep, state);
  return someImpossible ? uniformWhereImpossible(answer, logEvidence, states) : answer;
}

function uniformWhereImpossible(answer: Float64Array, logEvidence: Float64Array, states: number): Float64Array {
  const result = answer.slice();
  logEvidence.forEach((log, r) => {
    if (log === -Infinity) result.fill(1 / states, r * states, (r + 1) * states);
  });
  return result;
}
